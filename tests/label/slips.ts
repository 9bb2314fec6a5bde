/** The code with one digit wrong, in every way. */
export function substitutions(code: string): string[] {
  return [...code].flatMap((digit, place) =>
    [...'0123456789'].filter((other) => other !== digit).map((other) => replaced(code, place, other)),
  )
}

/** With two digits wrong. */
export function doubleSubstitutions(code: string): string[] {
  return [...code].flatMap((digit, place) =>
    [...'0123456789']
      .filter((other) => other !== digit)
      .flatMap((other) =>
        substitutions(code.slice(place + 1)).map((rest) => code.slice(0, place) + other + rest),
      ),
  )
}

/** With two different digits swapped that stand so far apart. */
export function swaps(code: string, distance: number): string[] {
  return [...code].flatMap((digit, place) => {
    const other = code[place + distance]
    if (other === undefined || other === digit) return []
    return [replaced(replaced(code, place, other), place + distance, digit)]
  })
}

/** With two equal neighbours both read as the same other digit. */
export function twins(code: string): string[] {
  return [...code].flatMap((digit, place) => {
    if (digit !== code[place + 1]) return []
    return [...'0123456789']
      .filter((other) => other !== digit)
      .map((other) => replaced(replaced(code, place, other), place + 1, other))
  })
}

/** With one digit left out. */
export function droppings(code: string): string[] {
  return [...code].map((_, place) => code.slice(0, place) + code.slice(place + 1))
}

/** With one digit written twice. */
export function doublings(code: string): string[] {
  return [...code].map((digit, place) => code.slice(0, place) + digit + code.slice(place))
}

/** With one digit put in before each place. */
export function additions(code: string): string[] {
  return [...code].flatMap((_, place) =>
    [...'0123456789'].map((added) => code.slice(0, place) + added + code.slice(place)),
  )
}

function replaced(code: string, place: number, digit: string): string {
  return code.slice(0, place) + digit + code.slice(place + 1)
}
