import { readThread, type Thread } from '../../src/trade/thread.ts'
import { type FastenerClass, readFastenerClass } from '../../src/trade/torque/fastener-class.ts'

/** A thread as the domain writes it: `M8x1`, `3/8-16`. */
export function thread(text: string): Thread {
  const reading = readThread(text)
  if (!reading.understood) throw new Error(`no thread: ${text}`)
  return reading.value
}

/** A class as the domain writes it: `10.9`, `grade 5`. */
export function fastenerClass(text: string): FastenerClass {
  const reading = readFastenerClass(text)
  if (!reading.understood) throw new Error(`no class: ${text}`)
  return reading.value
}
