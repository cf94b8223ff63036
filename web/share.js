// Files out and in. Out: a download, or the system's share sheet where the app runs from the home
// screen of a phone that can not download from there. In: the system's file picker.

const MOST_BYTES = 20e6;      // far past any notebook; keeps a wrong pick from filling the memory

function download(file) {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(file);
  link.download = file.name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60000);
}

export async function saveFile(name, type, text) {
  const file = new File([text], name, { type });
  if (navigator.standalone && navigator.canShare?.({ files: [file] })) {
    try {
      await navigator.share({ files: [file] });
      return;
    } catch (error) {
      if (error.name === 'AbortError') return;      // the person closed the sheet
    }
  }
  download(file);
}

// onOpened(name, bytes); nothing happens when the person picks nothing.
export function askForFile(onOpened, onRefused) {
  const picker = document.createElement('input');
  picker.type = 'file';
  picker.accept = '.json,application/json';
  picker.hidden = true;
  picker.addEventListener('change', async () => {
    const [file] = picker.files;
    picker.remove();
    if (!file) return;
    if (file.size > MOST_BYTES) { onRefused(`${file.name} is too large to be a circuit file.`); return; }
    try {
      onOpened(file.name, new Uint8Array(await file.arrayBuffer()));
    } catch {
      onRefused(`${file.name} could not be read.`);
    }
  });
  picker.addEventListener('cancel', () => picker.remove());
  document.body.append(picker);     // some phones only open a picker that stands in the page
  picker.click();
}
