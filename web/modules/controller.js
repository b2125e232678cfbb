// The one controller: it holds the design on the bench and shows every component what there is to show. Components
// know nothing of it or of each other; they tell what the maker did.

import { version } from "../wasm/panelwright.js";
import { byId } from "./dom.js";
import { History } from "./history.js";
import * as keeping from "./keep.js";
import { workOffline } from "./offline.js";
import { viewOf } from "./view-of.js";
import { capital, ended, withLabels } from "./words.js";
import { Announcer } from "./ui/announcer.js";
import { Brief } from "./ui/brief.js";
import { ChoicesList } from "./ui/choices-list.js";
import { Drawing } from "./ui/drawing.js";
import { Foot } from "./ui/foot.js";
import { Handover } from "./ui/handover.js";
import { workJumps } from "./ui/jumps.js";
import { Leaders } from "./ui/leaders.js";
import { Margin } from "./ui/margin.js";
import { Messages } from "./ui/messages.js";
import { TitleBlock } from "./ui/title-block.js";
import { Tools } from "./ui/tools.js";
import { Work } from "./ui/work.js";
import { Workshop } from "./workshop.js";

/** @typedef {import("../wasm/panelwright.js").Workbench} Workbench */
/** @typedef {import("../wasm/panelwright.js").Value} Value */
/** @typedef {import("../wasm/panelwright.js").View} View */

export class Controller {
  /** @type {Workbench} */ #bench;
  /** @type {import("../wasm/panelwright.js").Choice[]} */ #choices;
  #history = new History();
  /** @type {{ update: (view: View) => void }[]} */ #components;
  /** @type {View} */ #view;
  #due = 0;
  #messages = new Messages(byId("messages"));
  #announcer = new Announcer(byId("live"));
  #workshop = new Workshop();
  #tools;
  #foot;
  #drawing;
  #margin;
  /** @type {Leaders | undefined} */ #leaders;

  /** @param {Workbench} bench */
  constructor(bench) {
    this.#bench = bench;
    this.#choices = bench.choices();
    const events = {
      set: this.#set.bind(this),
      setAll: this.#setAll.bind(this),
      reset: this.#reset.bind(this),
      settle: () => this.#history.settle(),
    };
    const work = new Work(byId("work"), this.#workshop, {
      said: (text) => this.#announcer.say(text),
      wrong: (text) => this.#messages.wrong(text),
    });
    /** @type {import("./ui/work.js").WorkEvents} */
    const making = {
      workshop: this.#workshop,
      make: (what, ask) => work.make(what, ask),
      said: (text) => this.#announcer.say(text),
    };
    this.#tools = new Tools(byId("tools"), {
      undo: () => this.#step("undo"),
      redo: () => this.#step("redo"),
    });
    this.#drawing = new Drawing(byId("drawing"), {
      casePicture: (look) => {
        const told = bench.case_picture(look.azimuth_deg, look.elevation_deg, look.off, look.see_through, look.apart);
        const line = told.indexOf("\n");
        return { ...JSON.parse(told.slice(0, line)), svg: told.slice(line + 1) };
      },
      panelPicture: (id) => bench.panel_svg(id),
      smallPicture: (id) => bench.small_panel_svg(id),
      features: (id) => bench.features(id),
      choices: this.#choices,
      drawn: () => this.#leaders?.draw(),
      ...making,
    });
    this.#margin = new Margin(byId("margin"), this.#choices, {
      setAll: events.setAll,
      show: (index) => this.#show(index),
      arranged: () => this.#leaders?.draw(),
    });
    this.#leaders = new Leaders(byId("sheet"), this.#margin, this.#drawing);
    const handover = new Handover(byId("handover"), this.#choices, {
      ...events,
      ...making,
      bench,
      wrong: (text) => this.#messages.wrong(text),
      words: (error) => this.#words(error),
      open: async (name, text) => {
        const link = this.#workshop.ask(this.#view.link, "link_of_file", text);
        // What is wrong with the file is told as what is wrong with a link is: when it is put on the bench.
        const put = await link.then((fragment) => () => bench.replace_with_link(fragment), (error) => () => { throw error; });
        return this.#replace(put, `${name} is on the bench. Undo brings the design before it back.`);
      },
    });
    this.#foot = new Foot(byId("foot"), {
      cautions: bench.cautions(),
      sources: () => making.make("The list of sources", (workshop) => workshop.ask(this.#view.link, "sources")),
      version: version(),
    });
    this.#components = [
      new Brief(byId("brief"), this.#choices, events),
      new ChoicesList(byId("choices"), this.#choices, {
        ...events,
        anew: () => this.#replace(() => bench.clear(), "The example is on the bench again. Undo brings yours back."),
      }),
      this.#drawing,
      this.#margin,
      new TitleBlock(byId("title-block"), this.#choices, events),
      handover,
    ];
    this.#view = viewOf(bench.view(), this.#choices);
  }

  /** Takes the design of the address, else the one kept on the device, else the example; and shows it. */
  begin() {
    const link = keeping.fromAddress();
    const opened = link !== "" && this.#open(link);
    if (!opened) {
      const kept = keeping.fromDevice();
      if (kept !== "") {
        try {
          this.#bench.replace_with_link(kept);
        } catch {
          // What was kept by another version is no loss worth a message: the example is shown.
        }
      }
    }
    addEventListener("hashchange", () => {
      const link = keeping.fromAddress();
      if (link === "") keeping.keep(this.#view.link);
      else if (link !== this.#view.link) this.#openNow(link);
    });
    addEventListener("keydown", (event) => this.#key(event));
    workJumps(() => this.#margin.chosen);
    addEventListener("pagehide", () => keeping.write(this.#bench.link()));
    const [head, messages, sheet] = [byId("head"), byId("messages"), byId("sheet")];
    const sizes = new ResizeObserver(() => {
      messages.style.setProperty("--brief", `${head.offsetHeight}px`);
      const all = `${head.offsetHeight + messages.offsetHeight}px`;
      for (const { style } of [document.documentElement, sheet]) style.setProperty("--head", all);
    });
    sizes.observe(head);
    sizes.observe(messages);
    this.#redraw();
    this.#workOffline();
  }

  #workOffline() {
    workOffline({
      ready: () => this.#foot.offline("Ready to work offline."),
      none: async () => {
        // What cannot be kept is at least fetched, so that this page needs no network from now on.
        try {
          await this.#workshop.begin();
          this.#foot.offline("This page works without a network as long as it stays open; your browser keeps nothing of it here.");
        } catch (error) {
          this.#foot.offline(this.#words(error));
        }
      },
      newer: (use) => this.#foot.newer(use),
    });
  }

  /**
   * Takes one value. It is drawn with the next frame, however many changes come until then.
   * @param {string} key
   * @param {Value} value
   * @returns {string | null} why it was refused
   */
  #set(key, value) {
    const before = this.#bench.link();
    try {
      this.#bench.set(key, value);
    } catch (error) {
      return this.#words(error);
    }
    if (this.#bench.link() !== before) this.#changed(before, key);
    return null;
  }

  /** @param {[string, Value][]} changes */
  #setAll(changes) {
    const before = this.#bench.link();
    for (const [key, value] of changes) this.#bench.set(key, value);
    this.#changed(before, null);
  }

  /** @param {string} key */
  #reset(key) {
    const before = this.#bench.link();
    this.#bench.reset(key);
    this.#changed(before, null);
  }

  /**
   * @param {string} before
   * @param {string | null} run
   */
  #changed(before, run) {
    this.#history.note(before, run);
    this.#messages.clear();
    this.#draw();
  }

  /**
   * Puts another design on the bench, or says why not.
   * @param {() => void} put
   * @param {string} done
   */
  #replace(put, done) {
    const before = this.#bench.link();
    try {
      put();
    } catch (error) {
      this.#messages.wrong(`${this.#sentence(error)}\nThe design on screen stays as it was.`);
      return false;
    }
    this.#history.note(before, null);
    this.#messages.say(done);
    this.#draw();
    return true;
  }

  /**
   * Opens the link a visitor came with.
   * @param {string} link
   */
  #open(link) {
    try {
      this.#bench.replace_with_link(link);
      return true;
    } catch (error) {
      this.#messages.wrong(`${this.#sentence(error)}\nNothing was lost: the page shows the design it had before.`);
      return false;
    }
  }

  /**
   * Opens a link put into the address of the open page.
   * @param {string} link
   */
  #openNow(link) {
    const opened = this.#replace(
      () => this.#bench.replace_with_link(link),
      "The design of the link is on the bench. Undo brings the one before it back.",
    );
    if (!opened) keeping.keep(this.#view.link);
  }

  /** @param {"undo" | "redo"} way */
  #step(way) {
    const link = this.#history[way](this.#bench.link());
    if (link === null) return;
    this.#bench.replace_with_link(link);
    this.#messages.clear();
    this.#announcer.say(way === "undo" ? "Undone." : "Done again.");
    this.#draw();
  }

  /** @param {KeyboardEvent} event */
  #key(event) {
    if (event.key === "Escape") {
      this.#show(null);
      this.#messages.clear();
    }
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
    const key = event.key.toLowerCase();
    const way = key === "y" || (key === "z" && event.shiftKey) ? "redo" : key === "z" ? "undo" : null;
    if (way === null) return;
    event.preventDefault();
    /** @type {HTMLElement | null} */ (document.activeElement)?.blur();
    this.#step(way);
  }

  /**
   * Shows the place a finding speaks of.
   * @param {number | null} index
   */
  #show(index) {
    const finding = index === null ? null : (this.#view.findings[index] ?? null);
    this.#margin.select(finding ? index : null);
    this.#drawing.point(finding);
    // Where the notes lie below the drawing, it comes back into the window; the bar leads to the note again.
    if (finding) this.#drawing.bring();
    this.#leaders?.draw();
  }

  /** Draws everything with the next frame. */
  #draw() {
    if (this.#due !== 0) return;
    this.#due = requestAnimationFrame(() => this.#redraw());
  }

  #redraw() {
    this.#due = 0;
    this.#view = viewOf(this.#bench.view(), this.#choices);
    const view = this.#view;
    for (const component of this.#components) component.update(view);
    this.#leaders?.draw();
    this.#tools.update({ canUndo: this.#history.canUndo, canRedo: this.#history.canRedo });
    this.#announcer.tell(view);
    document.title = view.title ? `${view.title} – Panelwright` : "Panelwright";
    keeping.keep(view.link);
  }

  /** @param {unknown} error */
  #sentence(error) {
    return ended(this.#words(error));
  }

  /** @param {unknown} error */
  #words(error) {
    return capital(withLabels(error instanceof Error ? error.message : String(error), this.#choices));
  }
}
