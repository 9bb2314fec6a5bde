import { fromTicks, type MeasuredValve, ticks } from './valve.ts'

/** The thicknesses that bring a valve within its range, and the one that brings it to the middle; millimetres. */
export interface NeededShim {
  least: number
  middle: number
  most: number
}

/**
 * The shim that a valve needs: new = fitted + measured - wanted. The sign is the same for shims over and under the
 * bucket. Common practice; a screw adjuster needs no arithmetic.
 */
export function neededShim({ fitted, clearance, wanted }: MeasuredValve): NeededShim {
  const whole = ticks(fitted) + ticks(clearance)
  return {
    least: fromTicks(whole - ticks(wanted.most)),
    middle: fromTicks(whole - (ticks(wanted.least) + ticks(wanted.most)) / 2),
    most: fromTicks(whole - ticks(wanted.least)),
  }
}

/** The clearance that a valve has with a shim of another size, in millimetres. */
export function clearanceWith({ fitted, clearance }: MeasuredValve, size: number): number {
  return fromTicks(ticks(fitted) + ticks(clearance) - ticks(size))
}

/** Whether a shim brings a valve within its range, whose ends belong to it. */
export function fits({ least, most }: NeededShim, size: number): boolean {
  return ticks(size) >= ticks(least) && ticks(size) <= ticks(most)
}

/** How far a shim leaves a valve from the middle of its range, in half ticks: a whole number. */
export function halfTicksOff({ least, most }: NeededShim, size: number): number {
  return Math.abs(2 * ticks(size) - ticks(least) - ticks(most))
}
