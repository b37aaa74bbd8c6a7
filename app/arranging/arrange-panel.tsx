/** Everything that can be done with the places of what is selected: buttons for the commands, forms for typed figures. */
import {
  AlignCenterHorizontal,
  AlignCenterVertical,
  AlignEndHorizontal,
  AlignEndVertical,
  AlignHorizontalSpaceBetween,
  AlignStartHorizontal,
  AlignStartVertical,
  AlignVerticalSpaceBetween,
  BringToFront,
  Copy,
  Eye,
  EyeOff,
  FlipHorizontal2,
  Group,
  Lock,
  LockOpen,
  type LucideIcon,
  Move,
  Repeat2,
  RotateCcw,
  SendToBack,
  SquaresUnite,
  Ungroup,
} from "lucide-react";
import { runCommand } from "../commands/command.ts";
import { useDocument, useEditor, useView } from "../editor-context.tsx";
import { groupOf, hiddenIds, isOneGroup, lockedIds } from "../edits/arrangement.ts";
import { commandTip } from "../panels/tip-props.ts";
import type { ArrangeForm } from "../view/view-store.ts";
import { FormOf } from "./forms.tsx";
import "./arranging.css";

type Button = readonly [id: string, sign: LucideIcon];

const FORMS: readonly Button[] = [
  ["move-by", Move],
  ["turn", RotateCcw],
  ["mirror", FlipHorizontal2],
  ["repeat", Repeat2],
  ["copy", Copy],
];
const ALIGN: readonly Button[] = [
  ["align-left", AlignStartVertical],
  ["align-middle", AlignCenterVertical],
  ["align-right", AlignEndVertical],
  ["align-top", AlignStartHorizontal],
  ["align-center", AlignCenterHorizontal],
  ["align-bottom", AlignEndHorizontal],
];
const SPACE: readonly Button[] = [
  ["space-across", AlignHorizontalSpaceBetween],
  ["space-up", AlignVerticalSpaceBetween],
];

export function ArrangePanel({ ids }: { readonly ids: readonly string[] }) {
  const form = useView((view) => view.arranging);
  const setArranging = useView((view) => view.setArranging);
  const site = useDocument((state) => state.shown);
  const [locked, hidden] = [lockedIds(site), hiddenIds(site)];
  const areLocked = ids.length > 0 && ids.every((id) => locked.has(id));
  const areHidden = ids.length > 0 && ids.every((id) => hidden.has(id));
  const members = Math.max(1, ...ids.map((id) => groupOf(site, id).length));
  const isGroup = isOneGroup(site, new Set(ids));
  const isGrouped = members > 1;
  return (
    <section className="arrange" aria-label="Arrange">
      {areLocked ? (
        <p className="small soft">Locked: still shown, but the pointer passes it over and it stays where it is.</p>
      ) : null}
      {areHidden ? <p className="small soft">Hidden: not drawn, but still judged. It counts in the findings.</p> : null}
      {isGrouped && !isGroup && ids.length === 1 ? (
        <p className="small soft">
          In a group of {members}. <CommandLink id="select-group" />
        </p>
      ) : null}
      <div className="arrange-buttons">
        {FORMS.map(([id, sign]) => (
          <Sign key={id} id={id} sign={sign} isPressed={id === "copy" ? undefined : form === id} />
        ))}
        <Sign id="lock" sign={areLocked ? LockOpen : Lock} isPressed={areLocked} />
        <Sign id={areHidden ? "show" : "hide"} sign={areHidden ? Eye : EyeOff} />
        <Sign id="lay-on-top" sign={BringToFront} />
        <Sign id="lay-underneath" sign={SendToBack} />
        {isGrouped ? <Sign id="ungroup" sign={Ungroup} /> : null}
      </div>
      {ids.length > 1 ? (
        <div className="arrange-buttons">
          {ALIGN.map(([id, sign]) => (
            <Sign key={id} id={id} sign={sign} />
          ))}
          {SPACE.map(([id, sign]) => (
            <Sign key={id} id={id} sign={sign} />
          ))}
          {isGroup ? null : <Sign id="group" sign={Group} />}
          {ids.length === 2 ? <Sign id="join-lines" sign={SquaresUnite} /> : null}
        </div>
      ) : null}
      {form === null ? null : (
        <FormOf key={form} form={form as ArrangeForm} ids={ids} onClose={() => setArranging(null)} />
      )}
    </section>
  );
}

function Sign({ id, sign: Picture, isPressed }: { id: string; sign: LucideIcon; isPressed?: boolean | undefined }) {
  const editor = useEditor();
  const setArranging = useView((view) => view.setArranging);
  const command = editor.commands.get(id);
  const available = command.available(editor);
  const isForm = FORMS.some(([one]) => one === id) && id !== "copy";
  return (
    <button
      type="button"
      className="icon-button"
      aria-label={command.label}
      aria-pressed={isPressed}
      aria-disabled={available !== true}
      {...commandTip(command, available === true ? undefined : available)}
      onClick={() => (isForm && isPressed ? setArranging(null) : runCommand(editor, command))}
    >
      <Picture size={18} aria-hidden="true" />
    </button>
  );
}

function CommandLink({ id }: { readonly id: string }) {
  const editor = useEditor();
  const command = editor.commands.get(id);
  return (
    <button type="button" className="plain arrange-link" onClick={() => runCommand(editor, command)}>
      {command.label}
    </button>
  );
}
