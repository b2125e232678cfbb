//! Runs a wasm test binary in headless Chromium. Being built from the workspace's lock file, it
//! is always of the same version as the library in the tests, which they both insist on.

fn main() -> anyhow::Result<()> {
    wasm_bindgen_cli::wasm_bindgen_test_runner::run_cli_with_args(std::env::args_os())
}
