// The handover: what can be taken away. Each says what it will contain before it is taken.

import { h, say } from "../dom.js";
import { address, fileName, handOut, handOutCutting } from "../keep.js";
import { idle } from "../idle.js";
import { laterKerf, laterPrints } from "../later.js";
import { Newest } from "../newest.js";
import { BOTH_GOES, counted, plain, size } from "../words.js";

/** @typedef {import("../../wasm/panelwright.js").View} View */
/** @typedef {import("../../wasm/panelwright.js").Choice} Choice */
/** @typedef {Takes & import("./work.js").WorkEvents} Take */
/**
 * @typedef {object} Takes what the handover asks of the bench and of the page
 * @property {import("../../wasm/panelwright.js").Workbench} bench
 * @property {(key: string, value: import("../../wasm/panelwright.js").Value) => string | null} set
 * @property {() => void} settle
 * @property {(name: string, text: string) => Promise<boolean>} open whether it is on the bench now
 * @property {(text: string) => void} wrong
 * @property {(error: unknown) => string} words
 */

const PAPER = "template.paper";
const PAUSE_MS = 120;
/** How a JSON file says of which design it was made. */
const MARK = '"fingerprint": "';

export class Handover {
  /** @type {Take} */ #take;
  /** @type {View | null} */ #view = null;
  #paper;
  #pages = h("p", { class: "contains", "aria-busy": "true" }, "true size, as many pages as needed");
  #newest;
  #panel = h("select", { "aria-label": "Which panel" });
  #panels = h("p", { class: "contains" });
  #file = h("p", { class: "contains" });
  #copied = h("p", { class: "copied", role: "status" });
  #address = h("input", { type: "text", readonly: true, class: "address", "aria-label": "The link", hidden: true });
  #planned = "";
  /** Whether pages are counted yet. */
  #counting = false;
  /** @type {Map<string, number>} files of a kind that each panel's cutting takes, as the workshop counted them */
  #goes = new Map();
  /** @type {import("../later/prints.js").Prints | null} */ #prints = null;
  /** @type {import("../later/kerf.js").Kerf | null} */ #kerf = null;
  #kerfTest = act("Kerf test", () => void this.#testKerf(), "framed");
  #waiting = 0;

  /**
   * @param {HTMLElement} container
   * @param {Choice[]} choices
   * @param {Take} take
   */
  constructor(container, choices, take) {
    this.#take = take;
    this.#newest = new Newest(
      (link) => take.workshop.ask(link, "templates_plan"),
      (plan) => {
        const tiled = plan.sheets.filter((sheet) => sheet.pages > 1).length;
        const how = tiled === 0 ? "each panel on one page" : `${counted(tiled, "panel")} on several`;
        say(this.#pages, `${counted(plan.pages, "page")}, true size, ${how}`);
        // A change may have come while the pages were counted.
        if (this.#planned === this.#view?.link) this.#pages.setAttribute("aria-busy", "false");
        this.#goes = new Map(plan.sheets.map((sheet) => [sheet.panel, sheet.goes]));
        if (this.#view) this.#listPanels(this.#view);
      },
      // Why it did not work is said when the templates are asked for.
      () => say(this.#pages, "true size, as many pages as needed"),
    );
    const paper = choices.find((choice) => choice.key === PAPER);
    const papers = paper?.kind.type === "pick" ? paper.kind.options : [];
    this.#paper = h(
      "select",
      {
        "aria-label": "Paper in the printer",
        onchange: () => {
          take.set(PAPER, this.#paper.value);
          take.settle();
        },
      },
      ...papers.map((option) => h("option", { value: option.name }, option.label)),
    );
    const pick = h("input", { type: "file", multiple: true, class: "said", tabindex: -1, "aria-hidden": "true", onchange: () => void this.#picked(pick) });
    container.append(
      entry(
        "Templates",
        this.#pages,
        this.#paper,
        act("Save PDF", () => void this.#templates(), "strong", "Save PDF of the templates"),
        act("Test page", () => void this.#testPage(), "framed", "Save the test page for the printer"),
      ),
      entry(
        "Cutting files",
        this.#panels,
        this.#panel,
        act("DXF", () => void this.#cut("dxf"), "framed", "Save DXF of the chosen panels"),
        act("SVG", () => void this.#cut("svg"), "framed", "Save SVG of the chosen panels"),
        this.#kerfTest,
      ),
      entry("Pack", h("p", { class: "contains" }, "all files in one"), act("Save zip", () => void this.#pack(), "framed", "Save zip of the whole pack")),
      entry(
        "Design",
        this.#file,
        act("Save", () => this.#save(), "framed", "Save the design file"),
        act("Open", () => pick.click(), "framed", "Open a design, a pack or a file of one"),
        pick,
        act("Check a print", () => void this.#openPrints().then((prints) => prints?.show()), "framed"),
        act("Copy link", () => void this.#copy(), "framed"),
        this.#address,
        this.#copied,
      ),
    );
    this.#dropped();
  }

  /** @param {View} view */
  update(view) {
    const fresh = view.link !== this.#view?.link;
    this.#view = view;
    this.#prints?.update(view);
    this.#kerf?.update(view);
    this.#kerfTest.hidden = view.panels.every(({ id }) => method(view.values, id) !== "laser");
    this.#paper.value = String(view.values[PAPER]);
    this.#listPanels(view);
    if (fresh) {
      say(this.#copied, "");
      this.#address.hidden = true;
    }
    // Counting pages and bytes is worth a pause: it is not needed while a number is still being typed.
    if (this.#planned !== view.link) {
      this.#pages.setAttribute("aria-busy", "true");
      clearTimeout(this.#waiting);
      this.#waiting = window.setTimeout(() => this.#plan(), PAUSE_MS);
    }
  }

  #plan() {
    const view = this.#view;
    if (!view) return;
    const first = this.#planned === "";
    this.#planned = view.link;
    const bytes = size(new TextEncoder().encode(this.#take.bench.design_file()).length);
    say(this.#file, `every choice of yours: a file of ${bytes}, or a link of ${address(view.link).length} characters`);
    // The page stands before the workshop is started for this, however often the design changes until then.
    if (this.#counting) this.#newest.want(view.link);
    else if (first) {
      idle(() => {
        this.#counting = true;
        this.#newest.want(this.#planned);
      });
    }
  }

  /** @param {View} view */
  #listPanels(view) {
    if (this.#panel.options.length !== view.panels.length + 1) {
      this.#panel.replaceChildren(
        h("option", { value: "" }, "All panels"),
        ...view.panels.map((panel) => h("option", { value: panel.id }, panel.label)),
      );
      this.#panel.onchange = () => {
        if (this.#view) this.#listPanels(this.#view);
      };
    }
    const one = view.panels.find((panel) => panel.id === this.#panel.value);
    const goes = (/** @type {string} */ id) => this.#goes.get(id) ?? 1;
    if (!one) say(this.#panels, allMade(view, view.panels.reduce((sum, { id }) => sum + goes(id), 0)));
    else say(this.#panels, `${goes(one.id) > 1 ? "2 files, one for each face; " : ""}${made(view.values, one.id)}, true size`);
  }

  async #templates() {
    const paper = this.#paper.value;
    const pdf = await this.#made("The PDF of the templates", "templates_pdf");
    if (pdf === null) return;
    handOut(`${this.#name()}-templates-${paper}.pdf`, /** @type {BlobPart} */ (pdf), "application/pdf");
    this.#take.said(`Templates saved: ${size(pdf.byteLength)}. Print at 100 % and measure the bars.`);
  }

  /** What to print and measure first; the two readings are choices of the group Templates. */
  async #testPage() {
    const paper = this.#paper.value;
    const pdf = await this.#made("The test page", "test_page_pdf", paper);
    if (pdf === null) return;
    handOut(`test-page-${paper}.pdf`, /** @type {BlobPart} */ (pdf), "application/pdf");
    this.#take.said("Test page saved. Print it at 100 %, measure its two bars and enter what you read under Templates.");
  }

  /**
   * One panel's file, or each panel's in turn.
   * @param {"dxf" | "svg"} kind
   */
  async #cut(kind) {
    const panels = this.#view?.panels ?? [];
    const one = this.#panel.value;
    let count = 0;
    for (const { id } of panels.filter((panel) => one === "" || panel.id === one)) {
      const files = await this.#made("The cutting file", "cut_files", id, kind);
      if (files === null) return;
      await handOutCutting(this.#name(), files, kind);
      count += files.length;
    }
    if (one === "") this.#take.said(`${counted(count, "cutting file")} saved.`);
    else this.#take.said(count === 1 ? "Cutting file saved." : BOTH_GOES);
  }

  async #pack() {
    const zip = await this.#made("The pack", "pack_zip");
    if (zip === null) return;
    handOut(`${this.#name()}-pack.zip`, /** @type {BlobPart} */ (zip), "application/zip");
    this.#take.said(`Pack saved: ${size(zip.byteLength)}.`);
  }

  /**
   * A file of the design on show, as it is now.
   * @template {import("../workshop.js").Name} N
   * @param {string} what
   * @param {N} name
   * @param {Parameters<import("../workshop.js").Maker[N]>} args
   */
  #made(what, name, ...args) {
    const link = this.#view?.link ?? "";
    return this.#take.make(what, (workshop) => workshop.ask(link, name, ...args));
  }

  #save() {
    handOut(`${this.#name()}.json`, this.#take.bench.design_file(), "application/json");
    this.#take.said("Design file saved.");
  }

  async #copy() {
    const link = address(this.#view?.link ?? "");
    try {
      await navigator.clipboard.writeText(link);
      say(this.#copied, "Copied.");
    } catch {
      this.#address.hidden = false;
      this.#address.value = link;
      this.#address.select();
      say(this.#copied, "Copy it from the field.");
    }
  }

  /** @param {HTMLInputElement} pick */
  async #picked(pick) {
    const files = [...(pick.files ?? [])];
    pick.value = "";
    await this.#open(files);
  }

  /**
   * Opens what the maker brings: a design goes on the bench, with its pack or alone; other files are held against it.
   * @param {File[]} files
   */
  async #open(files) {
    const [first] = files;
    if (!first) return;
    if (files.length === 1 && /\.json$/i.test(first.name)) {
      const text = await first.text();
      // Without the mark of files that are made of a design it is one itself.
      if (!text.includes(MARK)) {
        await this.#take.open(first.name, text);
        return;
      }
    }
    const prints = await this.#openPrints();
    await prints?.bring(files);
  }

  async #openPrints() {
    if (this.#prints) return this.#prints;
    const part = await this.#take.make("The list of prints and files", laterPrints);
    if (part === null) return null;
    this.#prints ??= new part.Prints(this.#take);
    if (this.#view) this.#prints.update(this.#view);
    return this.#prints;
  }

  async #testKerf() {
    const part = await this.#take.make("The kerf test", laterKerf);
    if (part === null || !this.#view) return;
    this.#kerf ??= new part.Kerf(this.#take);
    this.#kerf.update(this.#view);
    this.#kerf.show();
  }

  /** Files let fall on the page open too. */
  #dropped() {
    document.addEventListener("dragover", (event) => {
      if (event.dataTransfer?.types.includes("Files")) event.preventDefault();
    });
    document.addEventListener("drop", (event) => {
      const files = [...(event.dataTransfer?.files ?? [])];
      if (files.length === 0) return;
      event.preventDefault();
      void this.#open(files);
    });
  }

  #name() {
    return fileName(this.#view?.title ?? "");
  }
}

/**
 * How a panel is made.
 * @param {Record<string, import("../../wasm/panelwright.js").Value>} values
 * @param {string} panel
 */
function method(values, panel) {
  const own = values[`method.${panel}`] ?? "same";
  return own === "same" ? values.method : own;
}

/**
 * How a panel's cutting file is made.
 * @param {Record<string, import("../../wasm/panelwright.js").Value>} values
 * @param {string} panel
 */
function made(values, panel) {
  switch (method(values, panel)) {
    case "router": {
      const cutter = `a ${plain(Number(values["router.cutter"]))} mm cutter`;
      return values["router.compensated"] === true ? `router: lines for the centre of ${cutter}` : `router: the panel's own lines, corners for ${cutter}`;
    }
    case "laser":
      return values["laser.compensated"] === true ? "laser: the beam's cut is allowed for" : "laser: the beam's cut is not allowed for";
    default:
      return "by hand: the panel's own lines";
  }
}

/**
 * @param {View} view
 * @param {number} count
 */
function allMade({ panels, values }, count) {
  const ways = [...new Set(panels.map((panel) => made(values, panel.id)))];
  return `${counted(count, "file")}, ${ways.length === 1 ? `${ways[0]}, true size` : `each as its panel is made: ${ways.map((way) => way.split(":")[0]).join(", ")}`}`;
}

/**
 * @param {string} name
 * @param {HTMLElement} contains
 * @param {...HTMLElement} acts
 */
function entry(name, contains, ...acts) {
  return h("div", { class: "entry" }, h("h3", {}, name), contains, h("div", { class: "acts" }, ...acts));
}

/**
 * @param {string} label
 * @param {() => void} onclick
 * @param {string} look
 * @param {string} [said]
 */
function act(label, onclick, look, said) {
  return h("button", { type: "button", class: look, onclick, "aria-label": said }, label);
}
