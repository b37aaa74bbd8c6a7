/** Keys as people read them. */

const isApple = typeof navigator !== "undefined" && /Mac|iPhone|iPad/.test(navigator.userAgent);

const NAMES: Readonly<Record<string, string>> = {
  ArrowLeft: "←",
  ArrowRight: "→",
  ArrowUp: "↑",
  ArrowDown: "↓",
  Escape: "Esc",
  Delete: "Del",
};

/** `Mod+Shift+Z` as `Ctrl+Shift+Z`; on a Mac as `Cmd+Shift+Z`. */
export function keyWords(key: string, apple: boolean = isApple): string {
  if (key === "+") return "+";
  return key
    .replace(/\+\+$/, "+plus")
    .split("+")
    .map((part) => (part === "Mod" ? (apple ? "Cmd" : "Ctrl") : part === "plus" ? "+" : (NAMES[part] ?? part)))
    .join("+");
}
