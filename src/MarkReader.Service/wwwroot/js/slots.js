import { send } from "./send.js";
import { showError, clearError, sentence } from "./errors.js";

const limit = 40 * 1024 * 1024;

// A place for one photo: it is sent and measured as soon as it is chosen, so that a bad photo shows while one still stands at the machine.
export class Slot {
  constructor(element) {
    this.element = element;
    this.name = element.dataset.slot;
    this.frame = element.querySelector(".slot-frame");
    this.empty = element.querySelector(".slot-empty");
    this.status = element.querySelector(".slot-status");
    this.remove = element.querySelector(".slot-remove");
    this.kept = element.querySelector("input[type=hidden]");
    this.done = Promise.resolve();
    this.round = 0;
    this.refused = null;
    for (const input of element.querySelectorAll("input[type=file]")) {
      input.addEventListener("change", () => { if (input.files.length) this.choose(input.files[0]); });
    }
    this.remove.addEventListener("click", () => this.clear());
    this.remove.hidden = !this.kept.value;
    this.acceptDrops();
  }

  // Shows the photo, sends it and says what was seen in it.
  choose(file) {
    const round = ++this.round;
    this.kept.value = "";
    this.refused = null;
    clearError(this.name);
    this.preview(file);
    this.done = this.sendAndMeasure(file, round);
    return this.done;
  }

  async sendAndMeasure(file, round) {
    if (file.size > limit) {
      return this.refuse({ detail: `the photo has ${(file.size / 1048576).toFixed(0)} MB, the limit is 40 MB`, hint: "take it at a lower resolution" });
    }
    const form = new FormData();
    form.append("photo", file, file.name);
    this.say("Sending…", "busy");
    const answer = await send("POST", "/api/photos", form, (part) => {
      if (round === this.round) this.say(part < 1 ? `Sending… ${Math.round(part * 100)} %` : "Measuring…", "busy");
    });
    if (round !== this.round) return;
    if (!answer.ok) {
      this.kept.value = answer.body?.photoId ?? "";
      return this.refuse(answer.problem);
    }
    this.kept.value = answer.body.id;
    this.report(answer.body.measurement);
  }

  report(measurement) {
    const count = measurement.marks.length;
    const seen = count === 1 ? "1 mark seen" : `${count} marks seen`;
    const warnings = measurement.warnings.map((warning) => sentence(warning.message));
    this.say([`${seen}; card read by ${measurement.card.markersSeen} markers.`, ...warnings].join(" "), warnings.length ? "" : "good");
  }

  refuse(problem) {
    this.refused = problem;
    this.say("", "");
    showError(this.name, problem);
  }

  clear() {
    this.round++;
    if (this.kept.value) send("DELETE", `/api/photos/${this.kept.value}`); // kept all the same when a result refers to it
    this.kept.value = "";
    this.remove.dispatchEvent(new Event("change", { bubbles: true }));
    this.refused = null;
    for (const input of this.element.querySelectorAll("input[type=file]")) input.value = "";
    this.frame.querySelector("img")?.remove();
    this.frame.classList.remove("filled");
    this.empty.hidden = false;
    this.remove.hidden = true;
    this.say("", "");
    clearError(this.name);
    this.element.querySelector("input[type=file]:not(.take input)")?.focus();
  }

  preview(file) {
    let image = this.frame.querySelector("img");
    if (!image) this.frame.append(image = document.createElement("img"));
    if (image.src.startsWith("blob:")) URL.revokeObjectURL(image.src);
    image.alt = `${this.element.querySelector("legend").textContent.trim()}: ${file.name}`;
    image.onerror = () => { image.remove(); this.frame.classList.remove("filled"); this.empty.hidden = false; };
    image.src = URL.createObjectURL(file);
    this.frame.classList.add("filled");
    this.empty.hidden = true;
    this.remove.hidden = false;
  }

  say(text, kind) {
    this.status.textContent = text;
    this.status.className = `slot-status ${kind}`;
  }

  acceptDrops() {
    const over = (on) => (e) => { e.preventDefault(); this.frame.classList.toggle("over", on); };
    this.frame.addEventListener("dragover", over(true));
    this.frame.addEventListener("dragleave", over(false));
    this.frame.addEventListener("drop", (e) => {
      over(false)(e);
      if (e.dataTransfer.files.length) this.choose(e.dataTransfer.files[0]);
    });
  }
}
