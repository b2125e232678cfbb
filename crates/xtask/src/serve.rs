//! `cargo xtask serve`: the page on a loopback port, by a small server of files and nothing else.

use std::fs;
use std::io::{BufRead, BufReader, Read, Write};
use std::net::{Ipv4Addr, TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex};
use std::time::{Duration, SystemTime};

use anyhow::{Context, Result};

use crate::dist;
use crate::workspace::Workspace;

/// Where the page is served unless a port is asked for: always the same when it is free, so
/// that what a browser keeps for the page is found again.
const USUAL_PORT: u16 = 8417;

/// Longest request line and head that are read, in bytes.
const LONGEST_HEAD: u64 = 16 * 1024;

/// Builds the page and serves it until stopped.
pub fn command(workspace: &Workspace, port: Option<u16>) -> Result<()> {
    dist::assemble(workspace)?;
    let listener = match port {
        Some(port) => TcpListener::bind((Ipv4Addr::LOCALHOST, port)).with_context(|| format!("port {port}"))?,
        None => TcpListener::bind((Ipv4Addr::LOCALHOST, USUAL_PORT))
            .or_else(|_| TcpListener::bind((Ipv4Addr::LOCALHOST, 0)))?,
    };
    println!("Panelwright is at http://{}/", listener.local_addr()?);
    println!("Changes in web/ show when the page is loaded again; after a change in crates/ start anew. Ctrl-C stops.");
    let seen = Mutex::new(newest(&workspace.web())?);
    let web = workspace.web();
    let bindings = workspace.target.join("page-bindings");
    let workspace = Workspace { root: workspace.root.clone(), target: workspace.target.clone() };
    serve(&listener, &workspace.dist(), move || {
        let Ok(mut seen) = seen.lock() else { return };
        match newest(&web) {
            Ok(now) if now != *seen => {
                *seen = now;
                if let Err(error) = dist::lay_out(&workspace, &bindings) {
                    eprintln!("the page cannot be put together: {error:#}");
                }
            }
            _ => {}
        }
    })
}

/// When the youngest file below was last written, and how many there are.
fn newest(folder: &Path) -> Result<(usize, SystemTime)> {
    let mut newest = SystemTime::UNIX_EPOCH;
    let files = dist::files_below(folder)?;
    for file in &files {
        newest = newest.max(fs::metadata(folder.join(file))?.modified()?);
    }
    Ok((files.len(), newest))
}

/// Answers every connection with files below `folder`; `before_page` runs before a page (not a
/// file it refers to) is handed out.
fn serve(listener: &TcpListener, folder: &Path, before_page: impl Fn() + Send + Sync + 'static) -> Result<()> {
    let before_page = Arc::new(before_page);
    let folder = folder.canonicalize()?;
    for stream in listener.incoming() {
        let (folder, before_page) = (folder.clone(), Arc::clone(&before_page));
        std::thread::spawn(move || {
            // A visitor that goes away in the middle is no concern of the server.
            let _ = stream.and_then(|stream| answer(stream, &folder, &*before_page));
        });
    }
    Ok(())
}

/// One request, one answer, then the connection closes.
fn answer(stream: TcpStream, folder: &Path, before_page: &dyn Fn()) -> std::io::Result<()> {
    stream.set_read_timeout(Some(Duration::from_secs(10)))?;
    let mut reader = BufReader::new(stream.try_clone()?.take(LONGEST_HEAD));
    let mut line = String::new();
    reader.read_line(&mut line)?;
    // The rest of the head is read, or closing would cut off the answer.
    let mut rest = String::new();
    while reader.read_line(&mut rest)? > 2 {
        rest.clear();
    }
    let mut words = line.split_whitespace();
    let (method, target) = (words.next().unwrap_or_default(), words.next().unwrap_or_default());
    let mut stream = stream;
    if method != "GET" && method != "HEAD" {
        return write(&mut stream, "405 Method Not Allowed", "text/plain", b"only GET and HEAD", true);
    }
    let Some(name) = name_of(target) else {
        return write(&mut stream, "400 Bad Request", "text/plain", b"this is no name of a file here", true);
    };
    if kind_of(&name).starts_with("text/html") {
        before_page();
    }
    match file_at(folder, &name).and_then(|path| fs::read(path).ok()) {
        Some(bytes) => write(&mut stream, "200 OK", kind_of(&name), &bytes, method == "GET"),
        None => write(&mut stream, "404 Not Found", "text/plain", b"there is no such file", method == "GET"),
    }
}

fn write(stream: &mut TcpStream, status: &str, kind: &str, bytes: &[u8], with_body: bool) -> std::io::Result<()> {
    write!(
        stream,
        "HTTP/1.1 {status}\r\nContent-Type: {kind}\r\nContent-Length: {}\r\nCache-Control: no-store\r\n\
         X-Content-Type-Options: nosniff\r\nConnection: close\r\n\r\n",
        bytes.len()
    )?;
    if with_body {
        stream.write_all(bytes)?;
    }
    stream.flush()
}

/// The file a request asks for, relative to the folder; none when it asks for anything that
/// could lie outside of it.
fn name_of(target: &str) -> Option<PathBuf> {
    let path = target.split(['?', '#']).next().unwrap_or_default();
    let path = decoded(path.strip_prefix('/')?)?;
    let mut name = PathBuf::new();
    for part in path.split('/') {
        match part {
            "" | "." => {}
            ".." => return None,
            part if part.contains(['\\', '\0', ':']) => return None,
            part => name.push(part),
        }
    }
    if path.is_empty() || path.ends_with('/') {
        name.push("index.html");
    }
    Some(name)
}

/// Percent-encoding undone (RFC 3986, 2.1), once; none when it is broken or is not text.
fn decoded(path: &str) -> Option<String> {
    let mut bytes = Vec::with_capacity(path.len());
    let mut rest = path.as_bytes();
    while let [first, tail @ ..] = rest {
        if *first == b'%' {
            let digits = std::str::from_utf8(tail.get(..2)?).ok()?;
            if !digits.bytes().all(|digit| digit.is_ascii_hexdigit()) {
                return None;
            }
            bytes.push(u8::from_str_radix(digits, 16).ok()?);
            rest = &tail[2..];
        } else {
            bytes.push(*first);
            rest = tail;
        }
    }
    String::from_utf8(bytes).ok()
}

/// The file, if it is one and truly lies in the folder (a link may point elsewhere).
fn file_at(folder: &Path, name: &Path) -> Option<PathBuf> {
    let path = folder.join(name).canonicalize().ok()?;
    (path.starts_with(folder) && path.is_file()).then_some(path)
}

/// What a file is, by its ending.
fn kind_of(name: &Path) -> &'static str {
    match name.extension().and_then(|ending| ending.to_str()).unwrap_or_default() {
        "html" => "text/html; charset=utf-8",
        "js" | "mjs" => "text/javascript; charset=utf-8",
        "css" => "text/css; charset=utf-8",
        "json" => "application/json",
        "webmanifest" => "application/manifest+json",
        "wasm" => "application/wasm",
        "svg" => "image/svg+xml",
        "png" => "image/png",
        "ico" => "image/x-icon",
        "woff2" => "font/woff2",
        "ttf" => "font/ttf",
        "pdf" => "application/pdf",
        "txt" => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::sync::atomic::{AtomicUsize, Ordering};

    #[test]
    fn names_stay_in_the_folder() {
        let name = |target| name_of(target).map(|name| name.to_string_lossy().into_owned());
        assert_eq!(name("/").as_deref(), Some("index.html"));
        assert_eq!(name("/?a=1").as_deref(), Some("index.html"));
        assert_eq!(name("/wasm/panelwright_bg.wasm?v=2").as_deref(), Some("wasm/panelwright_bg.wasm"));
        assert_eq!(name("/a%20b.svg").as_deref(), Some("a b.svg"));
        for target in
            ["/../Cargo.toml", "/%2e%2e/Cargo.toml", "/a/..%2f..%2fb", "/..%5cb", "/%zz", "/%+f", "/%ff", "x", ""]
        {
            assert_eq!(name(target), None, "{target}");
        }
    }

    /// Asks a running server and gives the whole answer.
    fn ask(address: std::net::SocketAddr, request: &str) -> String {
        let mut stream = TcpStream::connect(address).unwrap();
        write!(stream, "{request} HTTP/1.1\r\nHost: x\r\n\r\n").unwrap();
        let mut answer = String::new();
        stream.read_to_string(&mut answer).unwrap();
        answer
    }

    #[test]
    fn a_server_hands_out_its_folder_and_nothing_beside_it() {
        let base = std::env::temp_dir().join(format!("xtask-serve-{}", std::process::id()));
        let folder = base.join("dist");
        fs::create_dir_all(&folder).unwrap();
        fs::write(folder.join("index.html"), "<p>page").unwrap();
        fs::write(folder.join("m.wasm"), "wasm").unwrap();
        fs::write(base.join("secret"), "secret").unwrap();
        #[cfg(unix)]
        std::os::unix::fs::symlink(base.join("secret"), folder.join("link")).unwrap();

        let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, 0)).unwrap();
        let address = listener.local_addr().unwrap();
        let pages = Arc::new(AtomicUsize::new(0));
        let counted = Arc::clone(&pages);
        let served = folder.clone();
        std::thread::spawn(move || {
            serve(&listener, &served, move || {
                counted.fetch_add(1, Ordering::SeqCst);
            })
        });

        let page = ask(address, "GET /");
        assert!(page.starts_with("HTTP/1.1 200") && page.ends_with("<p>page"), "{page}");
        assert!(page.contains("Cache-Control: no-store"), "{page}");
        let module = ask(address, "GET /m.wasm");
        assert!(module.contains("Content-Type: application/wasm\r\n") && module.ends_with("wasm"), "{module}");
        assert!(ask(address, "HEAD /m.wasm").ends_with("\r\n\r\n"));
        assert!(ask(address, "GET /missing").starts_with("HTTP/1.1 404"));
        assert!(ask(address, "GET /link").starts_with("HTTP/1.1 404"));
        assert!(ask(address, "GET /%2e%2e/secret").starts_with("HTTP/1.1 400"));
        assert!(ask(address, "POST /").starts_with("HTTP/1.1 405"));
        assert_eq!(pages.load(Ordering::SeqCst), 1);
        fs::remove_dir_all(base).unwrap();
    }
}
