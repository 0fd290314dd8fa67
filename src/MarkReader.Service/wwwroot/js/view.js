// The photo of a result: the card alone, or all of it.
export function connectViews(root) {
  for (const button of root.querySelectorAll("[data-view]")) {
    button.hidden = false;
    button.addEventListener("click", () => {
      const picture = document.getElementById(button.dataset.view);
      const whole = button.getAttribute("aria-pressed") !== "true";
      button.setAttribute("aria-pressed", String(whole));
      picture.setAttribute("viewBox", whole ? picture.dataset.whole : picture.dataset.card);
    });
  }
}
