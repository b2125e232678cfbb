// Prints and files: which design they belong to. A pack brings its design back; other files, and the fingerprint on a
// sheet of paper, are held against the design on the bench.

import { h, say } from "../dom.js";
import { counted, ended } from "../words.js";

/** @typedef {import("../../wasm/panelwright.js").View} View */
/** @typedef {import("../../wasm/workshop.js").LookedAt} LookedAt */
/** @typedef {import("../../wasm/workshop.js").OpenedPack} OpenedPack */
/** @typedef {import("../../wasm/workshop.js").FileVerdict} FileVerdict */
/** @typedef {import("../ui/handover.js").Take} PrintsEvents */
/** @typedef {{ file: File, looked?: LookedAt, why?: string }} Brought a file, and what it is or why it cannot be read */
/** @typedef {{ name: string, verdict: FileVerdict | "unread", about: string }} Row */

/** In the order of their weight.
 * @type {[Row["verdict"], string][]} */
const VERDICTS = [
  ["unread", "Cannot be read"],
  ["other", "Another design"],
  ["unmarked", "No fingerprint"],
  ["design", "The design"],
  ["belongs", "Belongs"],
];
/** Files of these verdicts want no look. */
const QUIET = ["design", "belongs"];

export class Prints {
  /** @type {PrintsEvents} */ #events;
  /** @type {View | null} */ #view = null;
  /** Versions of the program known to have made files of the design.
   * @type {string[]} */
  #versions = [];
  #bench = h("p");
  #mark = h("input", { type: "text", id: "print-mark", autocomplete: "off", spellcheck: "false", autocapitalize: "characters", maxlength: 40, "aria-describedby": "print-said" });
  #checked = h("p", { class: "print-said", id: "print-said", role: "status" });
  #sum = h("p", { class: "prints-sum", role: "status" });
  #files = h("div");
  #dialog;

  /** @param {PrintsEvents} events */
  constructor(events) {
    this.#events = events;
    const pick = h("input", { type: "file", multiple: true, class: "said", tabindex: -1, "aria-hidden": "true", onchange: () => void this.#picked(pick) });
    this.#dialog = h(
      "dialog",
      { class: "sources prints", "aria-labelledby": "prints-title" },
      h(
        "div",
        { class: "dialog-head" },
        h("h2", { id: "prints-title" }, "Prints and files"),
        h("button", { type: "button", class: "framed", onclick: () => this.#dialog.close() }, "Close"),
      ),
      h(
        "div",
        { class: "dialog-body", tabindex: "0", role: "region", "aria-label": "Prints and files" },
        this.#bench,
        h(
          "form",
          {
            onsubmit: (/** @type {Event} */ event) => {
              event.preventDefault();
              void this.#check();
            },
          },
          h("label", { for: "print-mark" }, "Fingerprint on a print"),
          h("div", { class: "acts" }, this.#mark, h("button", { type: "submit", class: "framed" }, "Check")),
          this.#checked,
        ),
        h("h3", {}, "Files"),
        h("p", {}, "A pack, or any files of one: each says which design it was made from. A design goes on the bench, the others are held against it."),
        h("div", { class: "acts" }, h("button", { type: "button", class: "framed", onclick: () => pick.click() }, "Choose files"), pick),
        this.#sum,
        this.#files,
      ),
    );
    document.body.append(this.#dialog);
  }

  /** @param {View} view */
  update(view) {
    const other = this.#view !== null && view.fingerprint !== this.#view.fingerprint;
    this.#view = view;
    say(this.#bench, `On the bench: ${view.title ? `${view.title}, ` : ""}design ${view.fingerprint}.`);
    if (other) say(this.#checked, "");
  }

  show() {
    if (!this.#dialog.open) this.#dialog.showModal();
    this.#mark.focus();
  }

  /**
   * Looks at files; a design among them goes on the bench.
   * @param {File[]} files
   */
  async bring(files) {
    let all = await this.#lookAt(files);
    if (!all) return;
    const designs = all.flatMap(({ file, looked }) => (looked && looked.is !== "marked" ? [{ file, looked }] : []));
    const [only] = designs;
    const opened = only && designs.length === 1 ? only : null;
    if (opened && !(await this.#events.open(opened.file.name, opened.looked.design_file))) return;
    // By themselves a design and what cannot be read need no list, only a word.
    const [first] = all;
    if (all.length === 1 && !this.#dialog.open) {
      if (first?.looked?.is === "design") return;
      if (first?.why !== undefined) {
        this.#events.wrong(`${first.file.name}: ${ended(first.why)}\nThe design on screen stays as it was.`);
        return;
      }
    }
    if (opened && all.length > 1) {
      // The others belong to the design that is on the bench now.
      const again = await this.#lookAt(files);
      if (!again) return;
      all = again;
    }
    this.#tell(all, opened?.file.name ?? null, designs.length);
    if (!this.#dialog.open) this.#dialog.showModal();
  }

  /** @param {HTMLInputElement} pick */
  async #picked(pick) {
    const files = [...(pick.files ?? [])];
    pick.value = "";
    if (files.length > 0) await this.bring(files);
  }

  /**
   * What each file is, held against the design on the bench; null when it was stopped.
   * @param {File[]} files
   * @returns {Promise<Brought[] | null>}
   */
  #lookAt(files) {
    const link = this.#events.bench.link();
    return this.#events.make("The list of files", async (workshop) => {
      /** @type {Brought[]} */
      const all = [];
      for (const file of files) {
        const bytes = new Uint8Array(await file.arrayBuffer());
        try {
          all.push({ file, looked: await workshop.ask(link, "look_at", file.name, bytes) });
        } catch (error) {
          if (error instanceof Error && error.name === "Stopped") throw error;
          all.push({ file, why: this.#events.words(error) });
        }
      }
      return all;
    });
  }

  /**
   * @param {Brought[]} all
   * @param {string | null} opened the file whose design is on the bench now
   * @param {number} designs how many there are among them
   */
  #tell(all, opened, designs) {
    const rows = all.flatMap((one) => inRows(one, opened));
    const packs = all.flatMap(({ looked }) => (looked?.is === "pack" ? [looked] : []));
    const made = all.flatMap(({ looked }) => (looked && looked.is !== "design" && looked.other_version && looked.made_by ? [looked.made_by] : []));
    this.#versions = [...new Set(made)];
    const count = (/** @type {Row["verdict"]} */ verdict) => rows.filter((row) => row.verdict === verdict).length;
    const mark = opened === null ? null : (packs[0]?.fingerprint ?? null);
    const said = [];
    if (opened !== null) said.push(`${opened} is on the bench. Undo brings the design before it back.`);
    else if (designs > 1) said.push("These are several designs; the one on the bench stays. Open one of them by itself.");
    said.push(sentence(rows.length, count("belongs") + count("design"), count("other"), mark));
    for (const version of this.#versions) said.push(`Made by version ${version} of Panelwright, not by this one: do not mix such prints with new ones.`);
    say(this.#sum, said.join(" "));
    this.#files.replaceChildren(
      ...VERDICTS.flatMap(([verdict, word]) => {
        const of = rows.filter((row) => row.verdict === verdict);
        if (of.length === 0) return [];
        const list = h("ul", {}, ...of.map((row) => h("li", {}, row.name, row.about === "" ? null : h("span", { class: "print-about" }, ` ${row.about}`))));
        const head = [h("span", { class: "change-word" }, word), ` ${counted(of.length, "file")}`];
        const look = `prints-verdict is-${verdict}`;
        return [QUIET.includes(verdict) ? h("details", { class: look }, h("summary", {}, ...head), list) : h("section", { class: look }, h("h4", {}, ...head), list)];
      }),
    );
  }

  async #check() {
    const text = this.#mark.value;
    const link = this.#events.bench.link();
    const wrong = (/** @type {boolean} */ is) => {
      this.#mark.setAttribute("aria-invalid", String(is));
      this.#checked.classList.toggle("wrong", is);
    };
    try {
      const found = await this.#events.workshop.ask(link, "check_print", text, this.#versions);
      wrong(found.is === "misread" || found.is === "other");
      switch (found.is) {
        case "belongs":
          say(this.#checked, "This print belongs to the design on the bench.");
          break;
        case "version":
          say(this.#checked, `This print belongs to the design on the bench, but version ${found.version} of Panelwright made it. Do not mix it with new prints.`);
          break;
        case "misread":
          say(this.#checked, `Nearly: the design on the bench is ${found.design}. Compare it with the print letter by letter; most likely it was misread.`);
          break;
        default:
          say(this.#checked, `This print belongs to another design; the one on the bench is ${found.design}. Do not cut this case by it.`);
      }
    } catch (error) {
      wrong(true);
      say(this.#checked, ended(this.#events.words(error)));
    }
  }
}

/**
 * @param {Brought} brought
 * @param {string | null} opened
 * @returns {Row[]}
 */
function inRows({ file, looked, why }, opened) {
  const marks = (/** @type {FileVerdict} */ verdict, /** @type {string[]} */ fingerprints) => (verdict === "other" ? `design ${fingerprints.join(", ")}` : "");
  if (!looked) return [{ name: file.name, verdict: "unread", about: why ?? "" }];
  if (looked.is === "pack" && opened === file.name) return looked.files.map(({ name, verdict, fingerprints }) => ({ name, verdict, about: marks(verdict, fingerprints) }));
  if (looked.is === "marked") return [{ name: file.name, verdict: looked.verdict, about: marks(looked.verdict, looked.fingerprints) }];
  return [{ name: file.name, verdict: opened === file.name ? "design" : "other", about: `design ${looked.fingerprint}` }];
}

/**
 * @param {number} all
 * @param {number} own
 * @param {number} others
 * @param {string | null} mark of the pack that was opened; null when the files are held against the bench
 */
function sentence(all, own, others, mark) {
  const design = mark === null ? "the design on the bench" : `design ${mark}`;
  if (own === all) return `${all === 1 ? "It belongs" : `All ${all} files belong`} to ${design}.`;
  if (all === 1) return others === 1 ? `It does not belong to ${design}: do not mix them.` : `It is not known to belong to ${design}.`;
  const strange = others === 0 ? "none to another" : `${others} to another: do not mix them`;
  return `${own} of ${counted(all, "file")} ${own === 1 ? "belongs" : "belong"} to ${design}, ${strange}.`;
}
