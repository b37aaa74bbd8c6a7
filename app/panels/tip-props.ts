/** What a button tells about itself: its name, its key and what it does, for the tip beside it and for assistive technology. */
import type { Command } from "../commands/command.ts";
import { keyWords } from "./key-words.ts";

export interface TipProps {
  readonly "data-tip": string;
  readonly "data-tip-key"?: string;
  readonly "data-tip-more"?: string;
  readonly "aria-keyshortcuts"?: string;
}

/** The tip of a button; `more` is a further sentence. */
export function tip(words: string, key?: string, more?: string): TipProps {
  return {
    "data-tip": words,
    ...(key === undefined ? {} : { "data-tip-key": keyWords(key), "aria-keyshortcuts": shortcutOf(key) }),
    ...(more === undefined || more === "" ? {} : { "data-tip-more": more }),
  };
}

/** The tip of a button that runs a command. */
export function commandTip(command: Command, more?: string): TipProps {
  return tip(command.label, command.key, more);
}

/** A key in the words of WAI-ARIA 1.2: `Mod+Shift+Z` as `Control+Shift+Z`, a plus sign by its name. */
export function shortcutOf(key: string): string {
  if (key === "+") return "Plus";
  return key.replace(/\+\+$/, "+Plus").replace(/^Mod/, "Control");
}
