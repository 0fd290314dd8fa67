import { send } from "./send.js";
import { sentence } from "./errors.js";
import { fill, tooLarge } from "./words.js";

const limit = 40 * 1024 * 1024, retryAfter = 2000;

// Photos of the calibration board: sent one after the other as soon as they are chosen, and what they change on the page is renewed after each.
export class BoardPhotos {
  constructor(root) {
    this.id = root.dataset.calibration;
    this.waiting = [];
    this.count = 0;
    this.status = document.getElementById("boards-status");
    const form = root.querySelector("form[data-boards]");
    form.addEventListener("submit", (e) => e.preventDefault());
    for (const input of form.querySelectorAll("input[type=file]")) {
      input.addEventListener("change", () => {
        const files = [...input.files];
        input.value = ""; // the same photo can be chosen again
        this.add(files);
      });
    }
    const make = root.querySelector("form[data-make]"), making = document.getElementById("make-status");
    make.addEventListener("submit", (e) => {
      if (make.dataset.busy) return e.preventDefault();
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

  async add(files) {
    if (!files.length) return;
    if (!this.working) {
      this.count = 0;
      document.getElementById("boards-error").replaceChildren();
    }
    this.count += files.length;
    this.waiting.push(...files);
    if (this.working) return;
    this.working = true;
    while (this.waiting.length) await this.one(this.waiting.shift());
    this.working = false;
    this.progress(null);
  }

  async one(file) {
    if (file.size > limit) return this.refuse(file, tooLarge(file, limit));
    const at = this.count - this.waiting.length;
    for (;;) {
      const answer = await this.send(file, at);
      if (answer.status === 0 || answer.status === 503) {
        this.say(this.status.dataset.lost, "busy");
        await new Promise((resolve) => { setTimeout(resolve, retryAfter); });
        continue;
      }
      const listed = answer.ok || answer.problem.number;
      if (!listed) return this.refuse(file, answer.problem);
      await this.renew();
      if (answer.status === 201) return this.say(fill(this.status.dataset.done, answer.body.photos.at(-1).number), "good");
      if (answer.ok) return this.say(this.status.dataset.there, "");
      this.say(fill(this.status.dataset.refused, answer.problem.number), "");
      return this.refuse(file, answer.problem);
    }
  }

  send(file, at) {
    const form = new FormData();
    form.append("photo", file, file.name);
    return send("POST", `/api/calibrations/${this.id}/photos`, form, (part) => {
      this.progress(part);
      this.say(fill(part < 1 ? this.status.dataset.sending : this.status.dataset.measuring, at, this.count, Math.round(part * 100)), "busy");
    });
  }

  // What the page says of the calibration, as it is now.
  async renew() {
    try {
      const answer = await fetch(location.pathname);
      const page = new DOMParser().parseFromString(await answer.text(), "text/html");
      for (const place of document.querySelectorAll("[data-live]")) place.replaceChildren(...(page.getElementById(place.id)?.childNodes ?? []));
    } catch { /* the next photo renews it */ }
  }

  progress(part) {
    const bar = document.getElementById("boards-progress");
    bar.hidden = part === null;
    bar.value = part ?? 0;
  }

  say(text, kind) {
    this.status.textContent = text;
    this.status.className = `slot-status ${kind}`;
  }

  refuse(file, problem) {
    const place = document.getElementById("boards-error"), what = document.createElement("strong"), line = document.createElement("p");
    what.textContent = `${file.name}: ${sentence(problem.detail)}`;
    line.append(what, sentence(problem.hint ?? ""));
    place.append(line);
    if (this.status.classList.contains("busy")) this.say("", "");
  }
}
