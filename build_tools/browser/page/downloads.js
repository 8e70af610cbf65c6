// Files that come with an answer: each becomes a link that saves it on this device.
let addresses = [];

export function offerFiles(place, files) {
  for (const address of addresses) URL.revokeObjectURL(address);
  addresses = [];
  const list = place.querySelector("[data-files]");
  if (!list || !files?.length) return;
  list.replaceChildren(
    ...files.map((file) => {
      const item = document.createElement("li");
      item.append(linkTo(file));
      return item;
    }),
  );
  list.hidden = false;
}

// Saves a text as a file at once, as if its link had been tapped.
export function saveFile(file) {
  const link = linkTo(file);
  link.hidden = true;
  document.body.append(link);
  link.click();
  link.remove();
}

function linkTo({ name, type, text, label = name }) {
  const link = document.createElement("a");
  const address = URL.createObjectURL(new Blob([text], { type: `${type};charset=utf-8` }));
  addresses.push(address);
  link.href = address;
  link.download = name;
  link.textContent = label;
  return link;
}
