/** The rows of a long list that are on the screen. */
export interface Window {
  first: number
  count: number
  /** Rows above and below that are not shown. */
  above: number
  below: number
}

/** The window of `height` rows at a scroll position, which is held within the list. */
export function windowAt(length: number, height: number, scroll: number): Window {
  const first = Math.max(0, Math.min(scroll, length - height))
  const count = Math.min(Math.max(0, height), length - first)
  return { first, count, above: first, below: length - first - count }
}

/** A scroll position moved by whole pages or rows, held within the list. A page keeps one row for the eye. */
export function scrolled(
  { first }: Window,
  by: { pages: number } | { rows: number },
  length: number,
  height: number,
): number {
  const rows = 'pages' in by ? by.pages * Math.max(1, height - 1) : by.rows
  return windowAt(length, height, first + rows).first
}
