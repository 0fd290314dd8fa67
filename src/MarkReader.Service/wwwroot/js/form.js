import { send } from "./send.js";
import { sign } from "./words.js";
import { showError, clearError, clearAll, focusField } from "./errors.js";
import { showOutcome, setStale } from "./outcome.js";

// The form for an aim: errors beside their fields, progress while it is worked out, the result without leaving the page.
export class AimForm {
  constructor(form, slots) {
    this.form = form;
    this.slots = slots;
    this.button = document.getElementById("find");
    this.progress = document.getElementById("progress");
    form.addEventListener("submit", (e) => { e.preventDefault(); this.submit(); });
    for (const event of ["input", "change", "drop"]) form.addEventListener(event, () => setStale(true));
    form.addEventListener("input", (e) => {
      if (e.target.name && e.target.type !== "file") clearError(e.target.name);
      for (const slot of slots) if (slot.element.contains(e.target) && e.target.type === "text") slot.accept();
    });
    form.addEventListener("change", (e) => { if (e.target.name === "unit") this.changeUnit(); });
    this.showUnit();
  }

  get slotsInUse() {
    const both = this.form.elements.shows.value === "both";
    return this.slots.filter((slot) => (slot.name === "photo") === both);
  }

  async submit() {
    if (this.busy) return;
    clearAll();
    this.setBusy(this.progress.dataset.waiting);
    await Promise.all(this.slotsInUse.map((slot) => slot.done));
    const refused = this.slotsInUse.filter((slot) => slot.refused);
    if (refused.length) {
      for (const slot of refused) slot.refuse(slot.refused);
      this.setBusy(null);
      return focusField(refused[0].name);
    }
    this.setBusy(this.progress.dataset.measuring);
    const answer = await send("POST", "/api/aims", this.data());
    if (answer.ok) await showOutcome(answer.body.id);
    this.setBusy(null);
    if (!answer.ok) this.showProblem(answer.problem);
  }

  // The photos have been sent already: their ids go instead of their bytes.
  data() {
    const data = new FormData(this.form);
    for (const slot of this.slots) data.delete(slot.name);
    return data;
  }

  showProblem(problem) {
    const list = problem.errors ?? [{ ...problem, field: problem.field ?? "form" }];
    for (const one of list) showError(one.field, one);
    focusField(list[0].field);
  }

  setBusy(words) {
    this.busy = words !== null;
    this.button.setAttribute("aria-disabled", String(this.busy));
    this.progress.className = this.busy ? "busy" : "";
    this.progress.textContent = words ?? "";
  }

  // Lengths that were entered keep their meaning.
  changeUnit() {
    const inches = this.form.elements.unit.value !== "mm";
    for (const name of ["nearPath", "farPath"]) {
      const field = this.form.elements[name];
      const value = Number(field.value.replace(",", "."));
      if (!field.value.trim() || !Number.isFinite(value)) continue;
      field.value = sign(String(Number((inches ? value / 25.4 : value * 25.4).toPrecision(6))));
    }
    this.showUnit();
  }

  // A path in mm as it is typed here.
  path(millimetres) {
    return this.form.elements.unit.value === "mm" ? sign(String(millimetres)) : sign(String(Number((millimetres / 25.4).toPrecision(6))));
  }

  showUnit() {
    const unit = this.form.elements.unit.value;
    for (const place of this.form.querySelectorAll("[data-unit]")) place.textContent = unit;
  }
}
