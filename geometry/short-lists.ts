/**
 * Putting short lists in order, in place. Array.sort copies its list twice, which for the three cuts of an edge or the few
 * barriers near a line takes longer than the sorting: lists up to SHORT go by insertion, longer ones to Array.sort. Both
 * keep equals in the order in which they came.
 */
const SHORT = 16;

/** The list in ascending order of `of`. */
export function sortBy<T>(list: T[], of: (one: T) => number): T[] {
  if (list.length > SHORT) return list.sort((one, other) => of(one) - of(other));
  for (let i = 1; i < list.length; i++) {
    const one = list[i] as T;
    const value = of(one);
    let at = i;
    for (; at > 0 && of(list[at - 1] as T) > value; at--) list[at] = list[at - 1] as T;
    list[at] = one;
  }
  return list;
}

/** The numbers in ascending order. */
export function sortNumbers(list: number[]): number[] {
  if (list.length > SHORT) return list.sort((one, other) => one - other);
  for (let i = 1; i < list.length; i++) {
    const value = list[i] as number;
    let at = i;
    for (; at > 0 && (list[at - 1] as number) > value; at--) list[at] = list[at - 1] as number;
    list[at] = value;
  }
  return list;
}
