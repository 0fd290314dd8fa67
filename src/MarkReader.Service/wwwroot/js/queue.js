import { send } from "./send.js";
import { sentence } from "./errors.js";
import { onFiles } from "./files.js";
import { fill, tooLarge } from "./words.js";

const limit = 40 * 1024 * 1024, retryAfter = 2000;

// Photos that are not sent are lost with the page: the browser asks whether to leave it.
function warn(e) {
  e.preventDefault();
  e.returnValue = ""; // what older browsers heed
}

// Photos of several files: sent one after the other as soon as they are chosen, and what they change on the page is renewed after each.
export class PhotoQueue {
  // address: takes one photo; name: begins the ids of the status, the progress and the refusals; taken: told when a photo is used.
  constructor(forms, address, name, taken = () => {}) {
    this.address = address;
    this.taken = taken;
    this.name = name;
    this.waiting = [];
    this.count = 0;
    this.status = document.getElementById(`${name}-status`);
    for (const form of forms) {
      form.addEventListener("submit", (e) => e.preventDefault());
      const fields = [...form.querySelectorAll("input[type=hidden]")].map((input) => [input.name, input.value]);
      for (const input of form.querySelectorAll("input[type=file]")) {
        onFiles(input, (files) => {
          input.value = ""; // the same photo can be chosen again
          this.add(files.map((file) => ({ file, fields })));
        });
      }
    }
  }

  async add(photos) {
    if (!photos.length) return;
    if (!this.working) {
      this.count = 0;
      document.getElementById(`${this.name}-error`).replaceChildren();
    }
    this.count += photos.length;
    this.waiting.push(...photos);
    if (this.working) return;
    this.working = true;
    addEventListener("beforeunload", warn);
    while (this.waiting.length) await this.one(this.waiting.shift());
    removeEventListener("beforeunload", warn);
    this.working = false;
    this.progress(null);
  }

  async one({ file, fields }) {
    if (file.size > limit) return this.refuse(file, tooLarge(file, limit));
    const at = this.count - this.waiting.length;
    for (let lost = false; ;) {
      const answer = await this.send(file, fields, at);
      if (answer.status === 0 || answer.status === 503) {
        lost ||= answer.status === 0; // it may have come in all the same
        this.say(this.status.dataset.lost, "busy");
        await new Promise((resolve) => { setTimeout(resolve, retryAfter); });
        continue;
      }
      const listed = answer.ok || answer.problem.number;
      if (!listed) return this.refuse(file, answer.problem);
      await this.renew();
      if (answer.status === 201 || (answer.ok && lost)) {
        this.taken();
        return this.say(fill(this.status.dataset.done, answer.body.photos.at(-1).number), "good");
      }
      if (answer.ok) return this.refuse(file, { detail: this.status.dataset.there });
      this.say(fill(this.status.dataset.refused, answer.problem.number), "");
      return this.refuse(file, answer.problem);
    }
  }

  send(file, fields, at) {
    const form = new FormData();
    form.append("photo", file, file.name);
    for (const [name, value] of fields) form.append(name, value);
    return send("POST", this.address, form, (part) => {
      this.progress(part);
      this.say(fill(part < 1 ? this.status.dataset.sending : this.status.dataset.measuring, at, this.count, Math.round(part * 100)), "busy");
    });
  }

  // What the page says, as it is now.
  async renew() {
    try {
      const answer = await fetch(location.pathname);
      const page = new DOMParser().parseFromString(await answer.text(), "text/html");
      for (const place of document.querySelectorAll("[data-live]")) place.replaceChildren(...(page.getElementById(place.id)?.childNodes ?? []));
    } catch { /* the next photo renews it */ }
  }

  progress(part) {
    const bar = document.getElementById(`${this.name}-progress`);
    bar.hidden = part === null;
    bar.value = part ?? 0;
  }

  say(text, kind) {
    this.status.textContent = text;
    this.status.className = `slot-status ${kind}`;
  }

  refuse(file, problem) {
    const place = document.getElementById(`${this.name}-error`), what = document.createElement("strong"), line = document.createElement("p");
    what.textContent = `${file.name}: ${sentence(problem.detail)}`;
    line.append(what, sentence(problem.hint ?? ""));
    place.append(line);
    if (this.status.classList.contains("busy")) this.say("", "");
  }
}
