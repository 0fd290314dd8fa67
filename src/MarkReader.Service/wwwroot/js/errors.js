// Shows a refusal beside the field it concerns.
export function showError(field, problem) {
  const place = document.getElementById(`${field}-error`) ?? document.getElementById("form-error");
  place.replaceChildren();
  const what = document.createElement("strong");
  what.textContent = sentence(problem.detail ?? problem.message);
  place.append(what, sentence(problem.hint ?? ""));
  mark(field, true);
  return place;
}

export function clearError(field) {
  document.getElementById(`${field}-error`)?.replaceChildren();
  mark(field, false);
}

export function clearAll() {
  for (const place of document.querySelectorAll("#aim .error")) clearError(place.id.replace(/-error$/, ""));
}

// Puts the focus where the first error can be mended.
export function focusField(field) {
  const slot = document.querySelector(`[data-slot="${field}"]`);
  const control = slot
    ? [...slot.querySelectorAll("input[type=file]")].find((input) => input.offsetParent !== null)
    : document.getElementById(field) ?? document.querySelector(`#aim [name="${field}"]`);
  const place = document.getElementById(`${field}-error`) ?? document.getElementById("form-error");
  control?.closest("details")?.setAttribute("open", "");
  (control ?? place).focus({ preventScroll: true });
  place.scrollIntoView({ block: "center", behavior: "auto" });
}

function mark(field, wrong) {
  const control = document.getElementById(field);
  const slot = document.querySelector(`[data-slot="${field}"]`);
  if (slot) slot.classList.toggle("wrong", wrong);
  else if (control?.matches("input, select")) wrong ? control.setAttribute("aria-invalid", "true") : control.removeAttribute("aria-invalid");
}

export function sentence(text) {
  if (!text) return "";
  return text[0].toUpperCase() + text.slice(1) + (/[.?!]$/.test(text) ? "" : ".");
}
