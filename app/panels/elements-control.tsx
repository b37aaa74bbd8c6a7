/** A field that names several elements: those it names, each to be taken away, and a list to add from. */
import { X } from "lucide-react";
import { capitalized } from "../../rules/words/element-names.ts";
import { tip } from "./tip-props.ts";

interface ElementsControlProps {
  readonly id: string;
  /** The ids it names now. */
  readonly value: unknown;
  readonly isRequired: boolean;
  readonly elements: readonly { readonly id: string; readonly name: string }[];
  /** What it may name besides elements, as in the site file. */
  readonly others: readonly string[];
  /** `undefined` clears the field. */
  onChange(value: readonly string[] | undefined): void;
}

const OTHER_WORDS: Readonly<Record<string, string>> = { perimeter: "Perimeter bonding" };

export function ElementsControl({ id, value, isRequired, elements, others, onChange }: ElementsControlProps) {
  const named = Array.isArray(value) ? value.map(String) : [];
  const choices = [
    ...others.map((other) => ({ id: other, name: OTHER_WORDS[other] ?? capitalized(other) })),
    ...elements.map((element) => ({ id: element.id, name: capitalized(element.name) })),
  ];
  const nameOf = (one: string) => choices.find((choice) => choice.id === one)?.name ?? `${one}, not on the sheet`;
  return (
    <div className="named">
      {named.length === 0 ? null : (
        <ul>
          {named.map((one) => (
            <li key={one}>
              <span>{nameOf(one)}</span>
              <button
                type="button"
                className="plain icon-button"
                aria-label={`Take away ${nameOf(one)}`}
                {...tip(`Take away ${nameOf(one)}`)}
                onClick={() => {
                  const rest = named.filter((other) => other !== one);
                  onChange(rest.length === 0 && !isRequired ? undefined : rest);
                }}
              >
                <X size={14} aria-hidden="true" />
              </button>
            </li>
          ))}
        </ul>
      )}
      <select
        id={id}
        aria-describedby={`${id}-help`}
        value=""
        onChange={(event) => {
          if (event.target.value !== "") onChange([...named, event.target.value]);
        }}
      >
        <option value="">{named.length === 0 ? "none yet: add one" : "Add another"}</option>
        {choices
          .filter((choice) => !named.includes(choice.id))
          .map((choice) => (
            <option key={choice.id} value={choice.id}>
              {choice.name}
            </option>
          ))}
      </select>
    </div>
  );
}
