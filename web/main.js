// Loads the core and says which version it is.
import start, { version } from "./wasm/panelwright.js";

await start();
const place = document.getElementById("version");
if (place) place.textContent = `Version ${version()}`;
