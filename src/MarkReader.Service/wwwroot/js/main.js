import { Slot } from "./slots.js";
import { AimForm } from "./form.js";
import { connectSample } from "./sample.js";
import { TapDialog } from "./tap.js";
import { connectViews } from "./view.js";
import { VisitPage } from "./visit.js";
import { connectImport } from "./import.js";
import { localTimes } from "./times.js";
import { connectPaths } from "./paths.js";
import { connectBoards } from "./boards.js";
import { connectStudy } from "./studies.js";
import { connectMeasuring } from "./measuring.js";
import { connectSizes } from "./sizes.js";

const form = document.getElementById("aim");
if (form) {
  const tap = new TapDialog(document.getElementById("tap"));
  const slots = [...form.querySelectorAll("[data-slot]")].map((element) => new Slot(element, tap));
  const aim = new AimForm(form, slots);
  const sample = document.getElementById("sample");
  if (sample) connectSample(sample, aim);
}
if (document.querySelector("[data-visit]")) new VisitPage(new TapDialog(document.getElementById("tap")));
const bundle = document.querySelector("[data-import]");
if (bundle) connectImport(bundle);
connectViews(document);
localTimes(document);
const machine = document.querySelector("form#machine");
if (machine) connectPaths(machine);
const calibration = document.querySelector("[data-calibration]");
if (calibration) connectBoards(calibration);
const study = document.querySelector("[data-study]");
if (study) connectStudy(study);
for (const set of document.querySelectorAll("form[data-together]")) connectSizes(set); // before what waits for the answer
for (const long of document.querySelectorAll("form[data-measuring]")) connectMeasuring(long);
