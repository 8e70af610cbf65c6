// Files the reader picks stay on the device: their bytes are read here and go to the calculator in this page.
const contents = new WeakMap();

// Reads what was picked since the last time. A file that cannot be read counts as not picked.
export async function readPicked(form) {
  await Promise.all([...form.querySelectorAll("input[type=file][name]")].map(read));
}

// What a file field sends: the file as a data URL, or what stands for it until one is picked.
export function contentOf(input) {
  return contents.get(input)?.text ?? input.dataset.unlessPicked ?? "";
}

export function hasPicked(form) {
  return [...form.querySelectorAll("input[type=file][name]")].some((input) => input.files.length);
}

async function read(input) {
  const [file] = input.files;
  if (!file) return void contents.delete(input);
  if (contents.get(input)?.file === file) return undefined;
  const text = await new Promise((resolve) => {
    const reader = new FileReader();
    reader.onload = () => resolve(reader.result);
    reader.onerror = () => resolve("");
    reader.readAsDataURL(file);
  });
  contents.set(input, { file, text: text === "data:" ? "data:;base64," : text });
  return undefined;
}
