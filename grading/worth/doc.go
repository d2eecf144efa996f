// Package worth does the arithmetic of an appraisal, and shows it: every result
// comes with the working that a reader can repeat with a pencil, as it is
// printed. It has no prices of its own and judges none; it never averages
// approaches or comparables, since choosing among them is the appraiser's work.
//
// The rules, each of which the document can state:
//
//   - A line of the cost build-up is a plain amount; a price a carat times the
//     weight as printed; a price of a gram of fine metal times mass and fineness;
//     or a per cent of lines above it. It is rounded to the currency's smallest
//     unit, half away from zero, before it is added.
//   - A comparable is divided by its weight, taken through its adjustments one
//     after another in the order written, and multiplied by the subject's
//     weight; or taken as a whole. It is rounded once, at the end.
//   - Tax is added to a sum without it, or taken out of a sum with it, once.
//   - The conclusion is rounded once, to the nearest step, a half up.
//
// Amounts are exact fractions inside (math/big), never binary ones, and decimal
// text outside.
package worth
