/** Every command, in the order of menus and help. */
import { arrangeCommands } from "./arrange-commands.ts";
import { changeCommands } from "./change-commands.ts";
import { COMMAND_GROUPS, type Command, type CommandGroup } from "./command.ts";
import { dimensionCommands } from "./dimension-commands.ts";
import { findingCommands } from "./finding-commands.ts";
import { panelCommands } from "./panel-commands.ts";
import { reshapeCommands } from "./reshape-commands.ts";
import { selectCommands } from "./selection.ts";
import { helpCommands, siteCommands } from "./site-commands.ts";
import { toolCommands } from "./tool-commands.ts";
import { viewCommands } from "./view-commands.ts";

export interface CommandList {
  readonly all: readonly Command[];
  /** Throws a RangeError for an id that no command has. */
  get(id: string): Command;
  readonly groups: readonly { readonly group: CommandGroup; readonly commands: readonly Command[] }[];
}

export const COMMANDS: CommandList = commandList([
  ...siteCommands,
  ...changeCommands,
  ...reshapeCommands,
  ...dimensionCommands,
  ...arrangeCommands,
  ...selectCommands,
  ...viewCommands,
  ...panelCommands,
  ...findingCommands,
  ...toolCommands,
  ...helpCommands,
]);

export function commandList(all: readonly Command[]): CommandList {
  const byId = new Map(all.map((command) => [command.id, command]));
  return {
    all,
    get(id) {
      const command = byId.get(id);
      if (!command) throw new RangeError(`There is no command "${id}".`);
      return command;
    },
    groups: COMMAND_GROUPS.map((group) => ({ group, commands: all.filter((command) => command.group === group) })),
  };
}
