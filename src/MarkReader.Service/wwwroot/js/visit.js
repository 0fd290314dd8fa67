import { send } from "./send.js";
import { sentence } from "./errors.js";
import { TapDialog } from "./tap.js";
import { onFiles } from "./files.js";
import { words, tooLarge } from "./words.js";
import { localTimes } from "./times.js";
import { keepPhoto, keptPhoto, forgetPhoto } from "./keep.js";

const limit = 40 * 1024 * 1024, retryAfter = 2000, lookAfter = 4000;

// A visit's page: sends photos as soon as they are taken and forms without leaving the page, tries again when the connection is lost, and sees what another phone does.
export class VisitPage {
  constructor(tap) {
    this.tap = tap;
    this.connect();
    setInterval(() => this.look(), lookAfter);
    addEventListener("popstate", () => location.reload());
  }

  connect() {
    this.root = document.querySelector("[data-visit]");
    for (const form of document.querySelectorAll("form[data-step]")) form.addEventListener("submit", (e) => { e.preventDefault(); this.step(form, e.submitter); });
    this.upload = document.querySelector("form[data-upload]");
    if (this.upload) this.connectUpload();
    const tapForm = document.querySelector("form[data-tap-photo]");
    if (tapForm) this.connectTap(tapForm);
  }

  get visit() { return this.root?.dataset.visit; }

  // A form is sent with its key as often as it takes: it counts once. What asks for nothing but a look goes as its address.
  async step(form, submitter) {
    const body = new URLSearchParams(new FormData(form));
    if (form.dataset.busy) return this.hold(form, body.toString());
    form.dataset.busy = "1";
    form.sent = body.toString();
    submitter?.setAttribute("aria-disabled", "true");
    return form.method === "get" ? this.go(`${form.action}?${body}`) : this.ask(form.action, { method: "POST", body });
  }

  // Something else was entered in a form whose first entry has no answer yet: told now, and again when the answer has replaced the page.
  hold(form, body) {
    if (body === form.sent) return;
    form.sent = body;
    this.held = [...form.querySelectorAll("input[type=text], textarea, select")].map((field) => `${field.labels[0]?.textContent.trim() ?? field.name} ${field.value}`).join(", ");
    this.tellHeld("now");
  }

  tellHeld(when) {
    const note = document.getElementById("held");
    if (!note) return;
    note.hidden = false;
    note.textContent = note.dataset[when].replace("{0}", this.held);
    note.scrollIntoView({ block: "nearest" });
  }

  // Asks until there is an answer, and shows it.
  async ask(address, request) {
    for (;;) {
      try {
        const answer = await fetch(address, request), offline = document.getElementById("offline");
        if (offline) offline.hidden = true;
        return await this.show(answer);
      } catch {
        const offline = document.getElementById("offline");
        if (offline) { offline.hidden = false; offline.scrollIntoView({ block: "nearest" }); }
        await pause(retryAfter);
      }
    }
  }

  go(address) { return this.ask(address); }

  async show(answer) {
    const page = new DOMParser().parseFromString(await answer.text(), "text/html");
    const main = page.getElementById("main");
    if (!main?.querySelector("[data-visit]")) return location.assign(answer.url);
    document.getElementById("main").replaceChildren(...main.childNodes);
    localTimes(document);
    document.title = page.title;
    if (answer.redirected || answer.ok) history.pushState(null, "", answer.url);
    this.tap = new TapDialog(document.getElementById("tap"));
    this.connect();
    const wrong = [...document.querySelectorAll(".error")].find((place) => place.textContent.trim());
    const asked = document.querySelector("[data-ask]");
    const place = wrong ?? asked ?? document.getElementById("now") ?? document.querySelector("h1");
    place.setAttribute("tabindex", "-1");
    place.focus({ preventScroll: true });
    (wrong ?? asked ?? document.getElementById("main")).scrollIntoView({ block: wrong ? "center" : "start" });
    if (this.held) this.tellHeld("after");
    this.held = null;
  }

  connectUpload() {
    for (const input of this.upload.querySelectorAll("input[type=file]")) {
      onFiles(input, ([file]) => {
        input.value = ""; // the same photo can be chosen again
        this.choose(file);
      });
    }
    this.upload.addEventListener("submit", (e) => e.preventDefault());
    this.again = document.getElementById("photo-again");
    this.again.addEventListener("click", () => this.retry?.());
    const pulse = document.querySelector("form[data-pulse]");
    pulse?.addEventListener("submit", (e) => { e.preventDefault(); this.fire(pulse); });
    this.resume();
  }

  // A photo that was not sent before the page was left.
  async resume() {
    const upload = this.upload, file = await keptPhoto(this.visit);
    if (!file || upload !== this.upload || this.sending) return;
    this.say(this.words.waiting, "");
    this.again.hidden = false;
    this.retry = () => this.choose(file);
  }

  get words() { return document.getElementById("photo-status").dataset; }

  async fire(form) {
    if (this.sending) return;
    form.querySelector("button").setAttribute("aria-disabled", "true");
    this.say(this.words.sending, "busy");
    let answer = null;
    try { answer = await fetch(form.dataset.pulse); } catch { /* told below */ }
    form.querySelector("button").removeAttribute("aria-disabled");
    if (answer?.ok) return this.choose(new File([await answer.blob()], "pulse.jpg", { type: "image/jpeg" }));
    const problem = answer ? await answer.json().catch(() => null) : null;
    this.refuse(problem?.code ? problem : { detail: words.noAnswer, hint: words.again });
  }

  async choose(file) {
    if (this.sending) return this.tell({ detail: this.words.busy });
    if (file.size > limit) return this.refuse(tooLarge(file, limit));
    this.sending = true;
    this.refuse(null);
    this.again.hidden = true;
    const { visit, upload } = this;
    await keepPhoto(visit, file);
    for (;;) {
      const answer = await this.sendPhoto(file);
      if (upload !== this.upload) break; // another page is shown meanwhile; the photo is kept for the next time
      if (answer.status === 0 || answer.status === 503) {
        this.say(this.words.lost, "busy");
        this.again.hidden = false;
        await new Promise((resolve) => { this.retry = resolve; setTimeout(resolve, retryAfter); });
        this.again.hidden = true;
        continue;
      }
      await forgetPhoto(visit);
      this.sending = false;
      this.progress(null);
      const id = answer.ok ? answer.body.id : answer.problem.photoId;
      if (id) return this.go(`/visits/${visit}?photo=${id}`);
      return this.refuse(answer.problem);
    }
    this.sending = false;
  }

  sendPhoto(file) {
    const form = new FormData();
    form.append("photo", file, file.name);
    this.say(this.words.sending, "busy");
    return send("POST", "/api/photos", form, (part) => {
      this.progress(part);
      this.say(part < 1 ? this.words.part.replace("{0}", Math.round(part * 100)) : this.words.measuring, "busy");
    });
  }

  progress(part) {
    const bar = document.getElementById("photo-progress");
    if (!bar) return;
    bar.hidden = part === null;
    bar.value = part ?? 0;
  }

  say(text, kind) {
    const status = document.getElementById("photo-status");
    status.textContent = text;
    status.className = `slot-status ${kind}`;
  }

  refuse(problem) {
    this.progress(null);
    if (problem) this.say("", "");
    this.tell(problem);
  }

  tell(problem) {
    const place = document.getElementById("photo-error");
    place.replaceChildren();
    if (!problem) return;
    const what = document.createElement("strong");
    what.textContent = sentence(problem.detail);
    place.append(what, sentence(problem.hint ?? ""));
  }

  connectTap(form) {
    const button = form.querySelector("[data-tap-open]"), [x, y] = [form.elements.x, form.elements.y];
    button.hidden = false;
    button.addEventListener("click", async () => {
      const place = await this.tap.open(form.dataset.tapPhoto, "fresh", x.value && y.value ? [Number(x.value), Number(y.value)] : null);
      button.focus();
      if (!place) return;
      [x.value, y.value] = place.map((value) => value.toFixed(1));
      form.requestSubmit();
    });
  }

  // Another phone may have gone on: shown at once when nothing is being done here, else told.
  async look() {
    if (!this.visit || document.hidden || this.looking || this.sending || document.querySelector("form[data-busy]")) return;
    this.looking = true;
    const { visit } = this, { version } = this.root.dataset;
    try {
      const answer = await fetch(`/api/visits/${visit}`, { headers: { "If-None-Match": `"${version}"` } });
      if (answer.status === 200 && this.root.dataset.version === version && !this.sending) {
        const busy = new URLSearchParams(location.search).has("photo") || document.querySelector("dialog[open]") || [...document.querySelectorAll("main input[type=text], main textarea")].some((field) => field.value !== field.defaultValue);
        if (busy) document.getElementById("changed").hidden = false;
        else await this.go(`/visits/${visit}`);
      }
      const offline = document.getElementById("offline");
      if (offline) offline.hidden = true;
    } catch {
      const offline = document.getElementById("offline");
      if (offline) offline.hidden = false;
    }
    this.looking = false;
  }
}

function pause(ms) { return new Promise((resolve) => { setTimeout(resolve, ms); }); }
