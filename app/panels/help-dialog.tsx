/** How to begin, every key, and what this program is not. */
import { CAUTIONS } from "../../rules/cautions.ts";
import { OUTCOMES_WORST_FIRST } from "../../rules/report.ts";
import { OUTCOME_MEANINGS, OUTCOME_WORDS } from "../../rules/words/outcomes.ts";
import { runCommand } from "../commands/command.ts";
import { useEditor } from "../editor-context.tsx";
import { KEEPS_ORIGINAL, SIDE_KEYS, TURN_KEY } from "../tools/entry-keys.ts";
import { Dialog } from "./dialog.tsx";
import { keyWords } from "./key-words.ts";
import { OutcomeMark } from "./outcome-mark.tsx";

const STEPS: readonly string[] = [
  "Draw the pool along its inside wall, by dragging or by typed lengths; then decks, house, walls and fences, and whatever is of metal or electric.",
  "The column on the left holds the parts of the article in the code's order. Choose one: only its geometry stays on the sheet.",
  "Choose a finding: the sheet shows what was measured, and the limit as a line. Answer its question on the spot.",
  "Under Copper, choose how the ring is laid and tick off the ties as they are made.",
  "Save the site file, or print the plan to scale. A copy is kept in this browser at every step.",
];

const LENGTHS: readonly string[] = [`16' 6 1/2"`, "16.5", "198in", "5.03m"];

/** Keys that no command has: they belong to the drawing under way. */
const DRAWING: readonly (readonly [string, string])[] = [
  ["Alt", "Held down, it holds snapping off."],
  [
    "Enter",
    "Places what is typed, or ends the drawing. With the crosshair it places a corner; a second one there ends it.",
  ],
  ["Backspace", "Takes back what was placed last."],
  [
    Object.values(SIDE_KEYS).filter(Boolean).join(" "),
    "The next side is an arc: smooth, by radius, or through a point. Again: straight.",
  ],
  [TURN_KEY, "Bends an arc by radius to the other side."],
  [KEEPS_ORIGINAL, "While mirroring: the original stays, and a copy is mirrored. Again: the original itself."],
  ["Space", "Held down, it moves the sheet."],
];

export function HelpDialog({ onClose }: { onClose(): void }) {
  const editor = useEditor();
  const groups = editor.commands.groups
    .map(({ group, commands }) => ({ group, commands: commands.filter((command) => command.key !== undefined) }))
    .filter(({ commands }) => commands.length > 0);
  return (
    <Dialog title="Help" className="dialog-wide" onClose={onClose}>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, so keys have to reach it */}
      <section className="scrolls help" aria-label="How it works" tabIndex={0}>
        <p className="row">
          {(["walk", "commands"] as const).map((id) => (
            <button
              key={id}
              type="button"
              onClick={() => {
                onClose();
                runCommand(editor, editor.commands.get(id));
              }}
            >
              {editor.commands.get(id).label}
            </button>
          ))}
        </p>
        <ol className="help-steps">
          {STEPS.map((step) => (
            <li key={step}>{step}</li>
          ))}
        </ol>
        <p>
          Lengths are typed as {LENGTHS.slice(0, -1).join(", ")} or {LENGTHS.at(-1)}, directions as 90, 90 deg or N 45
          E. The wheel zooms about the pointer; two fingers move and zoom the sheet.
        </p>
        <p>
          A click on a dimension picks it: drag its line, type how far away it lies, or delete it. What is selected is
          mirrored by typed figures, or over a line drawn on the sheet.
        </p>
        <h3>While drawing</h3>
        <dl className="help-drawing">
          {DRAWING.map(([keys, what]) => (
            <div key={keys}>
              <dt>
                <kbd>{keys}</kbd>
              </dt>
              <dd>{what}</dd>
            </div>
          ))}
        </dl>
        <h3>What the signs say</h3>
        <ul className="help-outcomes">
          {OUTCOMES_WORST_FIRST.map((outcome) => (
            <li key={outcome}>
              <OutcomeMark outcome={outcome} />
              <span>
                <strong>{OUTCOME_WORDS[outcome]}</strong>: {OUTCOME_MEANINGS[outcome]}
              </span>
            </li>
          ))}
        </ul>
        <h3>Keys</h3>
        <div className="help-keys">
          {groups.map(({ group, commands }) => (
            <section key={group} aria-label={group}>
              <h4>{group}</h4>
              <dl>
                {commands.map((command) => (
                  <div key={command.id}>
                    <dt>{command.label}</dt>
                    <dd>
                      {[command.key, ...(command.otherKeys ?? [])].slice(0, 2).map((key) => (
                        <kbd key={key}>{keyWords(key ?? "")}</kbd>
                      ))}
                    </dd>
                  </div>
                ))}
              </dl>
            </section>
          ))}
        </div>
        <h3>Caution</h3>
        {CAUTIONS.map((caution) => (
          <p key={caution}>{caution}</p>
        ))}
      </section>
    </Dialog>
  );
}
