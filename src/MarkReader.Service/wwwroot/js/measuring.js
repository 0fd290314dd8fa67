import { fill } from "./words.js";

const every = 700;

// A form whose answer takes as long as its photos are measured: while the browser waits for it, the page tells how many are done.
export function connectMeasuring(form) {
  const status = form.querySelector("[role=status]"), bar = form.querySelector("progress"), button = form.querySelector("[type=submit]");
  let timer = 0;

  form.addEventListener("submit", () => {
    button.disabled = true;
    bar.hidden = false;
    bar.removeAttribute("value");
    say(status.dataset.sending, "busy");
    timer = setInterval(ask, every);
  });

  // Back by the browser's own button, the page is as it was left.
  window.addEventListener("pageshow", (e) => {
    if (!e.persisted) return;
    clearInterval(timer);
    button.disabled = false;
    bar.hidden = true;
    say("", "");
  });

  async function ask() {
    try {
      const answer = await fetch(`/api/interim/progress/${form.dataset.measuring}`);
      const { done, total } = await answer.json();
      if (!total) return;
      bar.max = total;
      bar.value = done;
      say(fill(status.dataset.measuring, done, total), "busy");
    } catch { /* the answer to the form is on its way */ }
  }

  function say(text, look) {
    if (status.textContent !== text) status.textContent = text;
    status.className = `slot-status ${look}`;
  }
}
