import { send } from "./send.js";
import { showError, clearError, sentence } from "./errors.js";
import { onFiles } from "./files.js";
import { fill, sign, tooLarge } from "./words.js";

const limit = 40 * 1024 * 1024;

// A place for one photo: it is sent and measured as soon as it is chosen, so that a bad photo shows while one still stands at the machine.
export class Slot {
  constructor(element, tap) {
    this.element = element;
    this.tap = tap;
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
      onFiles(input, ([file]) => this.choose(file));
    }
    this.remove.addEventListener("click", () => this.clear());
    this.remove.hidden = !this.kept.value;
    this.facts = element.querySelector(".slot-facts");
    this.naming = element.querySelector(".naming");
    for (const button of element.querySelectorAll("[data-tap]")) {
      button.hidden = false;
      button.addEventListener("click", () => this.showMark(button));
    }
    this.acceptDrops();
  }

  // The user shows where a mark is; the place goes with the form.
  async showMark(button) {
    const field = document.getElementById(button.dataset.tap);
    if (!this.kept.value) return showError(field.id, { detail: this.status.dataset.none, hint: this.status.dataset.noneHint });
    const [x, y] = field.value.split(/[,;\s]+/).map(Number);
    const place = await this.tap.open(this.kept.value, button.dataset.which, Number.isFinite(x) && Number.isFinite(y) && field.value ? [x, y] : null);
    if (place === undefined) return button.focus();
    field.value = place ? place.map((value) => value.toFixed(1)).join(",") : "";
    field.dispatchEvent(new Event("input", { bubbles: true }));
    button.focus();
  }

  // A photo in which the program sees no mark is taken once its marks are named.
  accept() {
    const fields = [...this.naming.querySelectorAll("input")];
    if (this.refused?.code !== "NO_MARK" || !fields.every((field) => field.value.trim())) return;
    this.refused = null;
    clearError(this.name);
    this.say(this.status.dataset.named, "");
  }

  forgetNames() {
    for (const field of this.naming.querySelectorAll("input")) { field.value = ""; clearError(field.id); }
    this.facts.textContent = "";
  }

  // Shows the photo, sends it and says what was seen in it.
  choose(file) {
    const round = ++this.round;
    this.kept.value = "";
    this.refused = null;
    clearError(this.name);
    this.forgetNames();
    this.preview(file);
    this.done = this.sendAndMeasure(file, round);
    return this.done;
  }

  async sendAndMeasure(file, round) {
    if (file.size > limit) return this.refuse(tooLarge(file, limit));
    const words = this.status.dataset;
    const form = new FormData();
    form.append("photo", file, file.name);
    this.say(words.sending, "busy");
    const answer = await send("POST", "/api/photos", form, (part) => {
      if (round === this.round) this.say(part < 1 ? words.part.replace("{0}", Math.round(part * 100)) : words.measuring, "busy");
    });
    if (round !== this.round) return;
    if (!answer.ok) {
      this.kept.value = answer.problem.photoId ?? "";
      if (answer.problem.code === "NO_MARK") this.naming.open = true;
      return this.refuse(answer.problem);
    }
    this.kept.value = answer.body.id;
    this.report(answer.body.measurement);
  }

  report(measurement) {
    const count = measurement.marks.length;
    const { seen, seenOne } = this.status.dataset;
    const warnings = measurement.warnings.map((warning) => sentence(warning.message));
    const most = this.name === "near" ? 1 : 2;
    if (count > most || measurement.doubtful.length) this.naming.open = true;
    this.facts.textContent = facts(this.facts.dataset, measurement.quality);
    this.say([fill(count === 1 ? seenOne : seen, count, measurement.card.markersSeen), ...warnings].join(" "), warnings.length ? "" : "good");
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
    this.forgetNames();
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

function facts(words, quality) {
  const percent = (part, digits) => sign((100 * part).toFixed(digits));
  const seen = fill(
    words.facts, quality.pixelsPerMm.toFixed(0), quality.tiltDegrees.toFixed(0), sign(quality.blurPx.toFixed(1)),
    percent(quality.paperLight, 0), percent(quality.noise, 1), quality.markersSeen, quality.markersTotal,
  );
  return quality.glareShare > 0.005 ? seen + fill(words.glare, percent(quality.glareShare, 0)) : seen;
}
