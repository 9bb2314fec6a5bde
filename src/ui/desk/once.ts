/** Values that are worked out once as long as nothing happens: a frame asks for the same more than once. */
export class Once {
  #at = ''
  readonly #values = new Map<string, unknown>()

  /** The value by its name; `at` tells whether anything happened since. */
  of<Value>(at: string, name: string, compute: () => Value): Value {
    if (this.#at !== at) this.forget()
    this.#at = at
    if (!this.#values.has(name)) this.#values.set(name, compute())
    return this.#values.get(name) as Value
  }

  /** Something happened that nothing else tells of. */
  forget(): void {
    this.#values.clear()
  }
}
