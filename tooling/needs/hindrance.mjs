/** A fault that the person at the terminal can do something about: said in words, without a stack. */
export class Hindrance extends Error {}
