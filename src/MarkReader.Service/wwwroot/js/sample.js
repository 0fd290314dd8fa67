import { showError, focusField } from "./errors.js";

// Fills the form with a pair of sample photos and their path lengths, and works it out.
export function connectSample(element, form) {
  element.addEventListener("submit", async (e) => {
    e.preventDefault();
    const button = element.querySelector("button");
    button.disabled = true;
    try {
      await load(form);
    } catch {
      showError("form", { detail: element.dataset.unreadable, hint: element.dataset.unreadableHint });
      focusField("form");
    }
    button.disabled = false;
  });
}

async function load(form) {
  const { samples } = await (await fetch("/api/samples")).json();
  const sample = samples[0];
  const elements = form.form.elements;
  elements.shows.value = "two";
  const values = { nearPath: form.path(sample.nearPath), farPath: form.path(sample.farPath), pathUncertainty: 1, incidenceDegrees: 0, pivotOffset: "" };
  for (const field of ["rulerU", "rulerV", "rulerUncertainty", "tapeHeight", "tapeHeightUncertainty"]) values[field] = "";
  for (const [field, value] of Object.entries(values)) elements[field].value = value;
  const photos = { near: sample.near, far: sample.far };
  for (const slot of form.slots.filter((each) => photos[each.name])) {
    const bytes = await (await fetch(photos[slot.name])).blob();
    slot.choose(new File([bytes], photos[slot.name].split("/").pop(), { type: bytes.type }));
  }
  await form.submit();
}
