/** Whether all figures of a text were typed: nothing that a torque or a limit could be taken for is ever proposed. */
export function hasOnlyFiguresOf(text: string, typed: string): boolean {
  const written = figuresOf(typed)
  return figuresOf(text).every((figure) => written.includes(figure))
}

function figuresOf(text: string): string[] {
  return text.match(/\d+/g) ?? []
}
