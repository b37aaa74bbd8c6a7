/** The drawing tools above the sheet. One of them has the tab stop; arrow keys go from one to the next. */
import { ChevronDown } from "lucide-react";
import { type KeyboardEvent, useRef } from "react";
import { runCommand } from "../commands/command.ts";
import { TOOLS } from "../commands/tool-commands.ts";
import { useEditor, useView } from "../editor-context.tsx";
import type { ToolId } from "../view/view-store.ts";
import { keyWords } from "./key-words.ts";
import { Menu } from "./menu.tsx";
import { commandTip } from "./tip-props.ts";
import { ToolIcon } from "./tool-icons.tsx";
import { FURTHER_TOOLS, labelOf, shortLabel, TOOL_GROUPS, TOOL_HINTS } from "./tool-words.ts";

export function ToolBar() {
  const editor = useEditor();
  const tool = useView((view) => view.tool);
  // The pool tool stands for the shapes that it offers.
  const isShape = tool === "pool-shape" || tool === "pool-curves";
  const bar = useRef<HTMLDivElement>(null);
  const isFurther = FURTHER_TOOLS.includes(tool) && !isShape;
  const choose = (next: ToolId) => runCommand(editor, editor.commands.get(`tool-${next}`));

  const onKeyDown = (event: KeyboardEvent) => {
    const way = event.key === "ArrowRight" ? 1 : event.key === "ArrowLeft" ? -1 : 0;
    if (way === 0 || event.target instanceof Element === false) return;
    const stops = [...(bar.current?.querySelectorAll<HTMLElement>("button:not([role])") ?? [])];
    const at = stops.indexOf(event.target as HTMLElement);
    if (at < 0) return;
    event.preventDefault();
    event.stopPropagation();
    stops[(at + way + stops.length) % stops.length]?.focus();
  };

  return (
    <div className="toolbar" role="toolbar" aria-label="Drawing tools" ref={bar} onKeyDown={onKeyDown}>
      {TOOL_GROUPS.map((group) => (
        <div className="toolbar-group" key={group[0]}>
          {group.map((id) => (
            <button
              key={id}
              type="button"
              className="tool"
              aria-label={labelOf(id)}
              aria-pressed={tool === id || (isShape && id === "pool-rectangle")}
              aria-description={TOOL_HINTS[id]}
              {...commandTip(editor.commands.get(`tool-${id}`), TOOL_HINTS[id])}
              onClick={() => choose(id)}
            >
              <ToolIcon tool={id} />
              <span className="tool-label">{shortLabel(id)}</span>
            </button>
          ))}
        </div>
      ))}
      <div className="toolbar-group">
        <Menu
          name={isFurther ? `More tools; in use: ${labelOf(tool)}` : "More tools"}
          className="tool"
          side="right"
          isPressed={isFurther}
          label={
            <>
              {isFurther ? <ToolIcon tool={tool} /> : <ChevronDown size={20} strokeWidth={1.4} aria-hidden="true" />}
              <span className="tool-label">More</span>
            </>
          }
          items={FURTHER_TOOLS.map((id) => ({
            id,
            label: labelOf(id),
            icon: <ToolIcon tool={id} />,
            key: keyOfTool(id),
            isChosen: tool === id,
            run: () => choose(id),
          }))}
        />
      </div>
    </div>
  );
}

function keyOfTool(id: ToolId): string {
  return keyWords(TOOLS.find((entry) => entry.tool === id)?.key ?? "");
}
