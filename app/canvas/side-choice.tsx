/** How the next side is drawn: straight, or one of three sorts of arc. */
import { Circle, CircleDot, FlipHorizontal2, Slash, Spline } from "lucide-react";
import { tip } from "../panels/tip-props.ts";
import { SIDE_KEYS, TURN_KEY } from "../tools/entry-keys.ts";
import { SIDE_SHAPES, SIDE_WORDS, type SideRule } from "../tools/side-shape.ts";

const SIGNS = { straight: Slash, smooth: Spline, radius: CircleDot, through: Circle } as const;

export function SideChoice({ rule, press }: { readonly rule: SideRule; press(key: string): void }) {
  return (
    <fieldset className="side-choice">
      <legend className="unseen">The next side</legend>
      {SIDE_SHAPES.map((shape) => {
        const Sign = SIGNS[shape];
        const { short, long } = SIDE_WORDS[shape];
        // The key of the shape in use makes the side straight again.
        const key = shape === "straight" ? SIDE_KEYS[rule.shape] : rule.shape === shape ? "" : SIDE_KEYS[shape];
        return (
          <button
            key={shape}
            type="button"
            className="icon-button"
            aria-pressed={rule.shape === shape}
            aria-label={short}
            {...tip(short, SIDE_KEYS[shape] || undefined, long)}
            onClick={() => {
              if (key !== "") press(key);
            }}
          >
            <Sign size={16} aria-hidden="true" />
          </button>
        );
      })}
      {rule.shape === "radius" ? (
        <button
          type="button"
          className="icon-button"
          aria-pressed={rule.isTurned}
          aria-label="Bend the other way"
          {...tip("Bend the other way", TURN_KEY)}
          onClick={() => press(TURN_KEY)}
        >
          <FlipHorizontal2 size={16} aria-hidden="true" />
        </button>
      ) : null}
    </fieldset>
  );
}
