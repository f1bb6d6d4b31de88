// What concerns the whole page: undo by keys, and a word when the workbench does not answer.

const isText = (element) =>
  element instanceof HTMLTextAreaElement ||
  (element instanceof HTMLInputElement && !["checkbox", "radio", "button", "file"].includes(element.type));

// A text that is just being typed has the browser's own undo; once it is done, the keys undo the rig.
document.addEventListener("input", (event) => isText(event.target) && event.target.setAttribute("data-typing", ""));
for (const name of ["change", "focusout"]) {
  document.addEventListener(name, (event) => event.target instanceof Element && event.target.removeAttribute("data-typing"));
}

document.addEventListener("keydown", (event) => {
  if (!(event.ctrlKey || event.metaKey) || event.altKey) {
    return;
  }
  const key = event.key.toLowerCase();
  const what = key === "z" ? (event.shiftKey ? "redo" : "undo") : key === "y" ? "redo" : null;
  const button = what && document.querySelector(`[data-key="${what}"]`);
  if (!button || (isText(document.activeElement) && document.activeElement.hasAttribute("data-typing"))) {
    return;
  }
  event.preventDefault();
  button.click();
});

// Hatches come as data, because the content policy lets no style attribute through.
const hatch = () =>
  document.querySelectorAll("svg [data-fill]").forEach((one) => {
    one.style.fill = one.dataset.fill;
    one.removeAttribute("data-fill");
  });
new MutationObserver(hatch).observe(document.body, { childList: true, subtree: true });
hatch();

const word = document.getElementById("components-reconnect-modal");
word?.addEventListener("components-reconnect-state-changed", (event) => {
  const state = event.detail.state;
  word.hidden = state === "hide";
  word.textContent = state === "rejected" || state === "failed" ? word.dataset.gone : word.dataset.lost;
  if (state === "rejected") {
    location.reload();
  }
  if (state === "failed") {
    setTimeout(() => location.reload(), 5000);
  }
});

// Blazor shows this by a style of its own, which the content policy does not allow here.
const broken = document.getElementById("blazor-error-ui");
if (broken) {
  new MutationObserver(() => (broken.hidden = false)).observe(broken, { attributes: true, attributeFilter: ["style"] });
}
