/** The forms: move by a distance, turn, mirror, repeat along a line. Each shows on the sheet what it would make, applies as one step and stays open. */
import { useEffect, useState } from "react";
import { namesOf } from "../../rules/words/element-names.ts";
import { hostOf } from "../canvas/host-of.ts";
import { useDocument, useEditor } from "../editor-context.tsx";
import { KEEPS_ORIGINAL } from "../tools/entry-keys.ts";
import type { ArrangeForm } from "../view/view-store.ts";
import { ArrangeFrame, Check, Choice, TypedField } from "./arrange-form.tsx";
import {
  type About,
  type Chosen,
  type Made,
  type MirrorFigures,
  type MoveFigures,
  mirrorMade,
  moveMade,
  type RepeatFigures,
  repeatMade,
  sidesOf,
  type TurnFigures,
  turnMade,
  withLines,
} from "./arranging.ts";
import { foreseenBy } from "./foresee.ts";

interface FormProps {
  readonly ids: readonly string[];
  onClose(): void;
}

export function FormOf({ form, ids, onClose }: FormProps & { readonly form: ArrangeForm }) {
  const props = { ids, onClose };
  if (form === "move-by") return <MoveForm {...props} />;
  if (form === "turn") return <TurnForm {...props} />;
  return form === "mirror" ? <MirrorForm {...props} /> : <RepeatForm {...props} />;
}

/**
 * Applies what is typed; the reason stands in the form when it cannot be. Says what was done. Until then the sheet shows
 * what it would make.
 */
function useApply<T>(
  ids: readonly string[],
  figures: T,
  make: (chosen: Chosen, figures: T) => Made,
  selects = false,
): { readonly problem: string | null; apply(): void } {
  const editor = useEditor();
  /** Why it could not be done, of the figures that stood then. */
  const [refused, setRefused] = useState<{ readonly of: T; readonly reason: string } | null>(null);
  /** What was done last: the same once more is not foreseen. */
  const [done, setDone] = useState<T | null>(null);
  const present = useDocument((state) => state.history.present);
  useEffect(() => {
    const made = figures === done ? null : make({ site: present, ids }, figures);
    const { foresee } = editor.view.getState();
    foresee(made?.ok ? foreseenBy(present, made.edit) : []);
    return () => foresee([]);
  }, [editor, present, ids, figures, done, make]);
  const apply = () => {
    const { document, view } = editor;
    const site = document.getState().history.present;
    const made = make({ site, ids }, figures);
    if (!made.ok) return setRefused({ of: figures, reason: made.reason });
    const refusal = document.getState().edit(made.edit);
    setRefused(refusal && { of: figures, reason: refusal.reason });
    if (refusal) return;
    setDone(figures);
    const { history } = document.getState();
    const label = history.past.at(-1)?.label;
    if (history.present === site) view.getState().say("That changes nothing.");
    else if (label !== undefined) view.getState().say(`${label}: done.`);
    const added = history.present.elements.slice(site.elements.length).map(({ id }) => id);
    if (selects && added.length > 0) view.getState().select([...ids, ...added]);
  };
  return { problem: refused?.of === figures ? refused.reason : null, apply };
}

const ABOUT_OPTIONS: readonly { readonly value: About; readonly label: string }[] = [
  { value: "middle", label: "Its middle" },
  { value: "lower-left", label: "Its lower left corner" },
  { value: "lower-right", label: "Its lower right corner" },
  { value: "upper-left", label: "Its upper left corner" },
  { value: "upper-right", label: "Its upper right corner" },
  { value: "place", label: "A place on the site" },
];

function MoveForm({ ids, onClose }: FormProps) {
  const [figures, setFigures] = useState<MoveFigures>({ kind: "sides", first: "", second: "" });
  const { problem, apply } = useApply(ids, figures, moveMade);
  const isSides = figures.kind === "sides";
  return (
    <ArrangeFrame title="Move by a distance" action="Move" problem={problem} onApply={apply} onClose={onClose}>
      <TypedField
        label={isSides ? "To the right" : "How far"}
        hint={`2' 6"`}
        text={figures.first}
        onChange={(first) => setFigures({ ...figures, first })}
      />
      <TypedField
        label={isSides ? "Up" : "Direction"}
        hint={isSides ? "-18in" : "N 45 E"}
        text={figures.second}
        onChange={(second) => setFigures({ ...figures, second })}
      />
      <Choice
        label="Given by"
        value={figures.kind}
        options={[
          { value: "sides", label: "Right and up" },
          { value: "bearing", label: "Length and direction" },
        ]}
        onChange={(kind) => setFigures({ kind, first: figures.first, second: "" })}
      />
    </ArrangeFrame>
  );
}

function TurnForm({ ids, onClose }: FormProps) {
  const [figures, setFigures] = useState<TurnFigures>({ degrees: "", about: "middle", x: "", y: "" });
  const { problem, apply } = useApply(ids, figures, turnMade);
  return (
    <ArrangeFrame title="Turn by degrees" action="Turn" problem={problem} onApply={apply} onClose={onClose}>
      <TypedField
        label="Degrees"
        hint="90; -90 turns right"
        text={figures.degrees}
        onChange={(degrees) => setFigures({ ...figures, degrees })}
      />
      <PlaceFields label="About" figures={figures} onChange={(place) => setFigures({ ...figures, ...place })} />
    </ArrangeFrame>
  );
}

function MirrorForm({ ids, onClose }: FormProps) {
  const editor = useEditor();
  const site = useDocument((state) => state.shown);
  const units = site.display?.units ?? "ft-in";
  const [figures, setFigures] = useState<MirrorFigures>({
    kind: "upright",
    about: "middle",
    x: "",
    y: "",
    direction: "",
    side: "",
    keepsOriginal: false,
  });
  const { problem, apply } = useApply(ids, figures, mirrorMade, true);
  const isSide = figures.kind === "side";
  const host = figures.side.slice(0, figures.side.lastIndexOf("/"));
  const element = site.elements.find(({ id }) => id === host);
  return (
    <ArrangeFrame title="Mirror" action="Mirror" problem={problem} onApply={apply} onClose={onClose}>
      <Choice
        label="About"
        value={figures.kind}
        options={[
          { value: "upright", label: "An upright line: left and right" },
          { value: "level", label: "A level line: top and bottom" },
          { value: "direction", label: "A line in a direction" },
          { value: "side", label: "The side of an element" },
        ]}
        onChange={(kind) => setFigures({ ...figures, kind })}
      />
      {isSide ? (
        <>
          <LineChoice
            label="Element"
            without={[]}
            value={host}
            none="Choose one"
            onChange={(id) => {
              const chosen = site.elements.find((one) => one.id === id);
              const [first] = chosen ? sidesOf(chosen, units) : [];
              setFigures({ ...figures, side: first?.value ?? `${id}/` });
            }}
          />
          {element ? (
            <Choice
              label="Side"
              value={figures.side}
              options={sidesOf(element, units)}
              onChange={(side) => setFigures({ ...figures, side })}
            />
          ) : null}
        </>
      ) : (
        <PlaceFields label="Through" figures={figures} onChange={(place) => setFigures({ ...figures, ...place })} />
      )}
      {figures.kind === "direction" ? (
        <TypedField
          label="Direction"
          hint="30 deg, N 45 E"
          text={figures.direction}
          onChange={(direction) => setFigures({ ...figures, direction })}
        />
      ) : null}
      <button
        type="button"
        onClick={() => {
          onClose();
          editor.view.getState().setTool("mirror");
          if (figures.keepsOriginal) hostOf(editor).key({ key: KEEPS_ORIGINAL, shift: false });
        }}
      >
        Draw the line on the sheet
      </button>
      <Check
        label="Keep the original and mirror a copy"
        isOn={figures.keepsOriginal}
        onChange={(keepsOriginal) => setFigures({ ...figures, keepsOriginal })}
      />
    </ArrangeFrame>
  );
}

function RepeatForm({ ids, onClose }: FormProps) {
  const [figures, setFigures] = useState<RepeatFigures>({
    along: "",
    length: "",
    direction: "0",
    by: "spacing",
    count: "5",
    spacing: "",
    aside: "",
    turning: false,
  });
  const { problem, apply } = useApply(ids, figures, repeatMade);
  const set = (change: Partial<RepeatFigures>) => setFigures({ ...figures, ...change });
  return (
    <ArrangeFrame title="Repeat along a line" action="Repeat" problem={problem} onApply={apply} onClose={onClose}>
      <LineChoice
        label="Along"
        without={ids}
        value={figures.along}
        none="A straight line"
        onChange={(along) => set({ along })}
      />
      {figures.along === "" ? (
        <>
          <TypedField label="Its length" hint="40'" text={figures.length} onChange={(length) => set({ length })} />
          <TypedField
            label="Direction"
            hint="0, 90 deg, N 45 E"
            text={figures.direction}
            onChange={(direction) => set({ direction })}
          />
        </>
      ) : null}
      <Choice
        label="Places by"
        value={figures.by}
        options={[
          { value: "spacing", label: "Spacing" },
          { value: "count", label: "How many in all" },
        ]}
        onChange={(by) => set({ by })}
      />
      {figures.by === "spacing" ? (
        <TypedField label="Spacing" hint="8'" text={figures.spacing} onChange={(spacing) => set({ spacing })} />
      ) : (
        <TypedField label="How many" hint="5" text={figures.count} onChange={(count) => set({ count })} />
      )}
      <TypedField
        label="Beside the line"
        hint="left; -12in: right"
        text={figures.aside}
        onChange={(aside) => set({ aside })}
      />
      <Check label="Turn with the line" isOn={figures.turning} onChange={(turning) => set({ turning })} />
    </ArrangeFrame>
  );
}

interface PlaceFieldsProps {
  readonly label: string;
  readonly figures: { readonly about: About; readonly x: string; readonly y: string };
  onChange(change: { readonly about?: About; readonly x?: string; readonly y?: string }): void;
}

function PlaceFields({ label, figures, onChange }: PlaceFieldsProps) {
  return (
    <>
      <Choice label={label} value={figures.about} options={ABOUT_OPTIONS} onChange={(about) => onChange({ about })} />
      {figures.about === "place" ? (
        <>
          <TypedField label="Right of origin" hint="0" text={figures.x} onChange={(x) => onChange({ x })} />
          <TypedField label="Up from origin" hint="0" text={figures.y} onChange={(y) => onChange({ y })} />
        </>
      ) : null}
    </>
  );
}

interface LineChoiceProps {
  readonly label: string;
  readonly without: readonly string[];
  readonly value: string;
  readonly none: string;
  onChange(id: string): void;
}

function LineChoice({ label, without, value, none, onChange }: LineChoiceProps) {
  const site = useDocument((state) => state.shown);
  const names = namesOf(site.elements);
  const lines = withLines(site, without).map(({ id }) => ({ value: id, label: names.get(id) ?? id }));
  return <Choice label={label} value={value} options={[{ value: "", label: none }, ...lines]} onChange={onChange} />;
}
