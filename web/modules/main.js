// Starts the page: loads the core, then hands over to the controller.

import start, { Workbench } from "../wasm/panelwright.js";
import { Controller } from "./controller.js";
import { byId } from "./dom.js";

try {
  await start();
  new Controller(new Workbench()).begin();
} catch (error) {
  byId("loading").textContent = `The page could not start: ${error instanceof Error ? error.message : error}. Load it again; nothing was lost.`;
  throw error;
}
