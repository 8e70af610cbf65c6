// A file picked beside a long text: its text goes into the box, as if it had been pasted. It stays on the device.
//
//   <textarea id="X"> with <input type="file" data-fills="X">, which has no name and is never sent
import { fillFromRecord } from "./record_fill.js";
import { giveWayToASheet } from "./worked_example.js";

export function serveFills(form, filled, signal) {
  form.addEventListener(
    "change",
    async ({ target }) => {
      const box = target.dataset?.fills && document.getElementById(target.dataset.fills);
      const [file] = target.files ?? [];
      if (!box || !file) return;
      const example = box.value === box.defaultValue;
      box.value = await file.text();
      target.value = "";
      if (box.name === "record") fillFromRecord(form, box.value);
      if (box.name === "sheet" && example) giveWayToASheet(form);
      filled();
    },
    { signal },
  );
}
