// What concerns the whole page: undo by keys, and a true word about what is kept when the workbench does not answer.

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

// What was typed and is not known to be kept: by the element it was typed into.
const unsent = new Map();
const kept = () => document.querySelector(".kept");

function settle() {
  if (kept()?.dataset.kept === "yes") {
    for (const [element, one] of unsent) {
      if (one.arrived || !element.isConnected) {
        unsent.delete(element);
      }
    }
  }
  kept()?.toggleAttribute("data-doubtful", [...unsent.values()].some((one) => performance.now() - one.since > 1000));
}

for (const name of ["input", "change"]) {
  document.addEventListener(
    name,
    (event) => {
      // Only fields tell that they have arrived; what else is on a page is kept by a button of its own.
      if (event.isTrusted && kept() && event.target.closest?.("[data-put]")) {
        unsent.set(event.target, { since: performance.now(), arrived: false });
        setTimeout(settle, 1100);
      }
    },
    true,
  );
}

// A field counts what has come to the workbench from it.
new MutationObserver((all) => {
  for (const { target, attributeName } of all) {
    if (attributeName === "data-put") {
      unsent.forEach((one, element) => (one.arrived ||= target.contains(element)));
    }
  }
  settle();
}).observe(document.body, { subtree: true, attributes: true, attributeFilter: ["data-put", "data-kept"] });

function told() {
  const named = [...unsent.keys()].filter((element) => element.isConnected).map((element) => {
    const label = element.labels?.[0]?.textContent.trim() ?? "";
    const value = element instanceof HTMLSelectElement ? element.selectedOptions[0]?.textContent : element.value;
    return `${label} = ${value}`;
  });
  return named.length > 0 ? word.dataset.unsent.replace("{0}", named.join("; ")) : "";
}

function say(text, more) {
  const list = told();
  word.textContent = list ? `${text} ${list}. ${more}` : text;
}

function gone() {
  if (!told()) {
    location.reload();
    return;
  }
  say(word.dataset.gone, word.dataset.unsentGone);
  const again = document.createElement("a");
  // An empty address would lead to the base of all pages.
  again.href = location.href;
  again.textContent = word.dataset.again;
  word.append(" ", again);
}

// The workbench may be away for long: the page goes on asking, and leaves nothing behind that was typed.
async function ask() {
  try {
    await fetch("/not-there", { method: "HEAD", cache: "no-store" });
    gone();
  } catch {
    setTimeout(ask, 2000);
  }
}

const word = document.getElementById("components-reconnect-modal");
word?.addEventListener("components-reconnect-state-changed", (event) => {
  const state = event.detail.state;
  word.hidden = state === "hide";
  document.body.toggleAttribute("data-lost", state !== "hide");
  if (state === "hide") {
    // What was typed meanwhile is told anew: until now it has come to nobody.
    for (const element of [...unsent.keys()]) {
      for (const name of ["input", "change"]) {
        element.dispatchEvent(new Event(name, { bubbles: true }));
      }
    }
  } else if (state === "rejected") {
    gone();
  } else {
    say(word.dataset.lost, word.dataset.unsentLost);
    if (state === "failed") {
      ask();
    }
  }
});
// What is typed while nobody answers is told as well.
document.addEventListener("input", () => !word?.hidden && !word.querySelector("a") && say(word.dataset.lost, word.dataset.unsentLost));

// Blazor shows this by a style of its own, which the content policy does not allow here.
const broken = document.getElementById("blazor-error-ui");
if (broken) {
  const tell = () => {
    const number = broken.querySelector("[data-number]");
    number.textContent = number.dataset.number.replace("{0}", document.getElementById("page-number")?.dataset.number ?? "–");
    const list = told();
    broken.querySelector("[data-list]").textContent = list ? `${list}. ${word.dataset.unsentGone}` : "";
    broken.querySelector("a").href = location.href;
    document.body.toggleAttribute("data-lost", true);
    broken.hidden = false;
  };
  new MutationObserver(tell).observe(broken, { attributes: true, attributeFilter: ["style"] });
}
