/** A dashed line, in millimetres: so much drawn, so much left out. */
export const dash = { on: 1, off: 1 } as const
