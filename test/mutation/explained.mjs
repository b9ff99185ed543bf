// Mutants that live and may: what they change makes no difference that anyone could meet. The file, a part of the line, what it becomes (any
// when not given), and the reason.
export const EXPLAINED = [];
