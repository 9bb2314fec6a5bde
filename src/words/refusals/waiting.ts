import type { Tellers } from './tellers.ts'

/** Refusals about orders, what is out of the house, what is put on and what is seen twice. */
export const waitingRefusals: Tellers<never> = {}
