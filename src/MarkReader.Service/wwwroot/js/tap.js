import { send } from "./send.js";
import { sentence } from "./errors.js";
import { fill, length } from "./words.js";

const space = "http://www.w3.org/2000/svg";
const keys = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };

// A photo in which the user shows where a mark is: by a tap, from a list of spots, with arrow keys, or as numbers. Places are in pixels of the photo as displayed.
export class TapDialog {
  constructor(dialog) {
    this.dialog = dialog;
    this.photo = dialog.querySelector("#tap-photo");
    this.spots = dialog.querySelector("#tap-spots");
    this.status = dialog.querySelector("#tap-status");
    this.x = dialog.querySelector("#tap-x");
    this.y = dialog.querySelector("#tap-y");
    this.views = [...dialog.querySelectorAll("[name=tapView]")];
    this.photo.addEventListener("click", (e) => { if (this.found) this.choose(this.placeOf(e)); });
    this.photo.addEventListener("keydown", (e) => this.press(e));
    for (const field of [this.x, this.y]) field.addEventListener("change", () => this.readNumbers());
    for (const view of this.views) view.addEventListener("change", () => this.show());
    dialog.querySelector("#tap-use").addEventListener("click", () => { if (this.place) this.finish(this.place); else this.status.textContent = this.status.dataset.unchosen; });
    dialog.querySelector("#tap-forget").addEventListener("click", () => this.finish(null));
    dialog.querySelector("#tap-cancel").addEventListener("click", () => this.finish(undefined));
    dialog.addEventListener("cancel", (e) => { e.preventDefault(); this.finish(undefined); });
    dialog.querySelector("form").addEventListener("submit", (e) => e.preventDefault());
  }

  // The place [x, y] that was chosen; null: the program is to find it; undefined: nothing is to change.
  open(photoId, which, place) {
    const title = this.dialog.querySelector("#tap-title");
    title.textContent = title.dataset[which];
    this.spots.replaceChildren();
    this.photo.replaceChildren();
    this.found = null;
    this.views[0].checked = true;
    this.status.textContent = this.status.dataset.looking;
    this.choose(place);
    this.dialog.showModal();
    this.fetch(photoId);
    return new Promise((resolve) => { this.resolve = resolve; });
  }

  finish(place) {
    this.photoId = null;
    this.dialog.close();
    this.resolve(place);
  }

  async fetch(photoId) {
    this.photoId = photoId;
    const answer = await send("GET", `/api/photos/${photoId}/spots`);
    if (this.photoId !== photoId) return;
    if (!answer.ok) {
      this.status.textContent = `${sentence(answer.problem.detail)} ${sentence(answer.problem.hint)}`;
      return;
    }
    this.found = answer.body;
    const { width, height } = this.found.photo;
    // Pixel centres are at whole numbers.
    this.add("image", { href: `/api/photos/${photoId}/original`, x: -0.5, y: -0.5, width, height, preserveAspectRatio: "none" });
    const list = [
      ...this.found.marks.map((m) => ({ ...m, words: this.spots.dataset.mark })),
      ...this.found.doubtful.map((m) => ({ ...m, words: this.spots.dataset.spot, doubtful: true })),
    ];
    list.forEach((spot, i) => this.offer(spot, i + 1));
    this.status.textContent = list.length ? "" : this.status.dataset.none;
    this.show();
  }

  // A ring in the photo and a button in the list.
  offer(spot, number) {
    const scale = this.zoneSide() / 26;
    const radius = Math.max(spot.diameter * scale * 0.8, scale * 1.2);
    this.add("circle", { cx: spot.x, cy: spot.y, r: radius, class: spot.doubtful ? "ring doubtful" : "ring" });
    this.add("text", { x: spot.x + radius, y: spot.y - radius }).textContent = String(number);
    const item = document.createElement("li");
    const button = document.createElement("button");
    button.type = "button";
    button.className = "button";
    button.textContent = fill(spot.words, number, length(spot.diameter, 1), spot.reason);
    button.addEventListener("click", () => this.choose([spot.x, spot.y]));
    item.append(button);
    this.spots.append(item);
  }

  choose(place) {
    this.place = place ?? null;
    [this.x.value, this.y.value] = this.place ? this.place.map((value) => value.toFixed(1)) : ["", ""];
    if (this.place) this.status.textContent = "";
    if (this.found) this.show();
  }

  readNumbers() {
    const place = [this.x, this.y].map((field) => Number(field.value.replace(",", ".")));
    if (this.x.value.trim() && this.y.value.trim() && place.every(Number.isFinite)) this.choose(place);
  }

  press(e) {
    const step = keys[e.key];
    if (!step || !this.found) return;
    e.preventDefault();
    const by = e.shiftKey ? 10 : 1;
    const from = this.place ?? this.middle();
    this.choose([from[0] + by * step[0], from[1] + by * step[1]]);
  }

  placeOf(e) {
    const point = new DOMPoint(e.clientX, e.clientY).matrixTransform(this.photo.getScreenCTM().inverse());
    return [point.x, point.y];
  }

  // The part of the photo that is asked for, and the cross.
  show() {
    const { width, height } = this.found.photo;
    const view = this.views.find((each) => each.checked).value;
    const side = this.zoneSide() * (view === "near" ? 0.35 : 1.25);
    const [x, y] = view === "near" && this.place ? this.place : this.middle();
    const box = view === "photo" ? [-0.5, -0.5, width, height] : [x - side / 2, y - side / 2, side, side];
    this.photo.setAttribute("viewBox", box.join(" "));
    for (const number of this.photo.querySelectorAll("text")) number.setAttribute("font-size", box[2] / 16);
    for (const old of this.photo.querySelectorAll(".cross")) old.remove();
    if (!this.place) return;
    const arm = Math.max(box[2], box[3]) / 16;
    const [u, v] = this.place;
    for (const kind of ["cross under", "cross"]) this.add("path", { d: `M${u - arm} ${v}H${u + arm}M${u} ${v - arm}V${v + arm}`, class: kind });
  }

  middle() {
    const sum = (name) => this.found.zone.reduce((total, corner) => total + corner[name], 0) / 4;
    return [sum("x"), sum("y")];
  }

  zoneSide() {
    const of = (name) => { const all = this.found.zone.map((corner) => corner[name]); return Math.max(...all) - Math.min(...all); };
    return Math.max(of("x"), of("y"));
  }

  add(kind, attributes) {
    const element = document.createElementNS(space, kind);
    for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
    this.photo.append(element);
    return element;
  }
}
