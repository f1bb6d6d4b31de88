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

// On a phone the rooms scroll sideways: the one that was entered comes into sight.
let entered = null;
new MutationObserver(() => {
  const here = document.querySelector(".rooms [aria-current]");
  const list = here?.closest("ul");
  if (list && here.href !== entered) {
    entered = here.href;
    list.scrollLeft = here.offsetLeft - list.offsetLeft - (list.clientWidth - here.offsetWidth) / 2;
  }
}).observe(document.body, { childList: true, subtree: true, attributes: true, attributeFilter: ["aria-current"] });

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
  const tell = () => {
    const told = broken.querySelector("[data-number]");
    told.textContent = told.dataset.number.replace("{0}", document.getElementById("page-number")?.dataset.number ?? "–");
    broken.hidden = false;
  };
  new MutationObserver(tell).observe(broken, { attributes: true, attributeFilter: ["style"] });
}
