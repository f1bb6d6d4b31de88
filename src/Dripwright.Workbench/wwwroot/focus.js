// Brings what a page was asked for into focus, also where it only comes with the next drawing of the page.

const calm = matchMedia("(prefers-reduced-motion: reduce)");

export function focusOn(id) {
  let tries = 0;
  const look = () => {
    // A list that has no element yet stands for the field within it.
    let found = null;
    for (let name = id; !found && name.includes("-"); name = name.slice(0, name.lastIndexOf("-"))) {
      found = document.getElementById(name);
    }
    found ??= document.getElementById(id);
    if (found && (found.id === id || tries > 20)) {
      if (found.closest(".inputs")) {
        // Whoever came from the findings wants to see what the field does to the drawing.
        document.querySelector(".seen")?.scrollTo({ top: 0 });
      }
      found.focus({ preventScroll: true });
      found.scrollIntoView({ block: found.id === "findings" ? "start" : "center", behavior: calm.matches ? "auto" : "smooth" });
    } else if (tries++ < 40) {
      setTimeout(look, 50);
    }
  };
  look();
}
