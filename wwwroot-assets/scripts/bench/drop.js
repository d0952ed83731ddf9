// Files that are let go anywhere on the page go where the form for files sends them.
const form = document.querySelector("form[data-drop]");
const sign = document.querySelector("[data-dropping]");
const holdsFiles = event => [...(event.dataTransfer?.types ?? [])].includes("Files");
let inside = 0;

const show = () => { sign.hidden = inside === 0; };

addEventListener("dragenter", event => {
  if (holdsFiles(event)) {
    inside++;
    show();
  }
});
addEventListener("dragleave", event => {
  if (holdsFiles(event)) {
    inside = Math.max(0, inside - 1);
    show();
  }
});
addEventListener("dragover", event => {
  if (holdsFiles(event)) {
    // without this the browser would go to the file
    event.preventDefault();
    event.dataTransfer.dropEffect = "copy";
  }
});
addEventListener("drop", event => {
  if (!holdsFiles(event)) {
    return;
  }
  event.preventDefault();
  inside = 0;
  show();
  if (event.dataTransfer.files.length > 0) {
    form.elements.namedItem("Files").files = event.dataTransfer.files;
    form.submit();
  }
});
