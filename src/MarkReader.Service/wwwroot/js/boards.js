import { PhotoQueue } from "./queue.js";
import { clearError } from "./errors.js";

// Photos of the calibration board, and the camera that is made of them.
export function connectBoards(root) {
  const make = root.querySelector("form[data-make]"), making = document.getElementById("make-status");
  const name = make.elements.name, mended = () => { clearError("make"); name.removeAttribute("aria-invalid"); };
  name.addEventListener("input", mended);
  if (name.value !== name.defaultValue) mended(); // typed before this script had loaded
  // One more photo mends what was wrong with the photos, not with the name.
  const taken = () => { if (!name.hasAttribute("aria-invalid")) clearError("make"); };
  const queue = new PhotoQueue([root.querySelector("form[data-boards]")], `/api/calibrations/${root.dataset.calibration}/photos`, "boards", taken);
  make.addEventListener("submit", (e) => {
    if (make.dataset.busy) return e.preventDefault();
    if (queue.working) return; // the browser asks whether to leave; whoever stays presses again
    make.dataset.busy = "1";
    make.querySelector("button").setAttribute("aria-disabled", "true");
    making.className = "slot-status busy";
    making.textContent = making.dataset.working;
  });
  // Gone back to, the page works again.
  addEventListener("pageshow", () => {
    delete make.dataset.busy;
    make.querySelector("button").removeAttribute("aria-disabled");
    making.className = "slot-status";
    making.textContent = "";
  });
}
