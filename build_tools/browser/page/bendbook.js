// The page's script. It carries no calculation: it takes what is typed to the worker and puts back what
// comes. What it expects in a page:
//
//   <html lang="en" class="no-js">                  this script takes no-js away; a style sheet hides what
//                                                   stands under [data-needs-script] while it is there
//   <script src="words.en.js">                      the words it shows, by name: see ../words.py
//
//   <div data-desk>                                 one calculator
//     <div data-echo aria-hidden="true">            the answer's sentence again, kept in sight while one types
//     <form data-calculator="spin-to-break">
//       <div class="field" data-field="speed_mph">  ids: CALCULATOR-FIELD, problem: CALCULATOR-FIELD-problem
//         <label for="spin-to-break-speed_mph">, <input id=... name="speed_mph">,
//         <p class="problem" id="spin-to-break-speed_mph-problem" hidden>
//       <fieldset class="field" data-field=...>     radio buttons, with one problem place for the group
//       <fieldset data-rows="outings">              a table of rows, counted from 0
//         <div data-row="0">                        fields named outings.0.date, ids CALCULATOR-outings-0-date
//           <button type="button" data-remove-row>
//         <template data-row-template>              one such row with ROW in place of the number
//         <button type="button" data-add-row>
//       a date field named "today" is set to the device's date as soon as the form is used
//       a field with data-private stays out of the page's address
//       <input type="file" data-unless-picked="example">   what is sent until a file is picked
//       <input type="file" data-fills="ID">     puts the text of a file into the textarea of that id
//       <button type="button" data-tap="10">        beside an input: adds to its number
//     <div data-status role="status" aria-live="polite">    empty; filled here
//     <p data-example-note>                         hidden once the answer is no longer the worked example
//     <div data-answer>                             the worked example; gets data-stale while fields need mending,
//                                                   and is taken away when the form is emptied
//     <button type="button" data-copy-link data-needs-script>
//     <button type="button" data-print>             prints the answer alone; inside .sheet, that sheet alone
//     <section data-log>, <section data-counter>, <section data-record>, <section data-photo>, <details data-throws>
//                                                   see log.js, counter.js, record.js, photo.js, throws.js
//     in an answer: <ul data-files hidden>          filled with links to the files that come with it
//
//   <a class="term" href="..." data-meaning="...">  opens <span class="term-note"> right behind itself
//   <div data-hand-choice> with <button data-hand="right" aria-pressed> and left; sets data-hand on <html>
//   <button type="button" data-print-page>          prints the page
//   <button type="button" data-large-print aria-pressed>   sets the class large on <html>; so does ?large
//   [data-until="2027-03-01"], [data-due="..."]     hidden, or shown, from the day after
//   [data-kept]                                     a line that says what is kept on this device
//   <button type="button" data-keep>                asks the browser to keep it for good
//   made here: <section class="edition-banner">, <span class="link-note"> behind the copy button, and
//   <span class="only-heard">, which a style sheet hides from sight only
/* global FROM_DISK -- put in by the build: true in the copy that is opened from a disk */
import { serveCalculator } from "./calculator.js";
import { serveCounter } from "./counter.js";
import { keepEdition, showKept } from "./edition.js";
import { showByDate } from "./dates.js";
import { leadToPages } from "./disk_links.js";
import { applyHand, serveHandChoice } from "./hand.js";
import { applyLargePrint, serveLargePrint } from "./large_print.js";
import { serveLog } from "./log.js";
import { servePhoto } from "./photo.js";
import { servePrinting } from "./printing.js";
import { serveRecord } from "./record.js";
import { serveTerms } from "./terms.js";
import { serveThrows } from "./throws.js";
import { takeTyped } from "./typed.js";

let leave = [];

function openPage() {
  for (const stop of leave) stop();
  applyHand();
  applyLargePrint();
  showByDate();
  showKept();
  const typed = takeTyped();
  leave = [...document.querySelectorAll("form[data-calculator]")].flatMap((form) => {
    const tools = [serveLog(form), serveCounter(form), serveRecord(form), servePhoto(form), serveThrows(form)];
    return [serveCalculator(form, typed[form.dataset.calculator]), ...tools];
  });
}

document.documentElement.classList.remove("no-js");
if (FROM_DISK) leadToPages();
serveTerms();
serveHandChoice();
servePrinting();
serveLargePrint();
// Where pages change without a reload, `document$` tells of each; the worker then lives on between them.
if (self.document$) self.document$.subscribe(openPage);
else openPage();
// After the page, so that keeping a copy never delays the first page a reader sees.
if (document.readyState === "complete") keepEdition();
else addEventListener("load", () => keepEdition(), { once: true });
