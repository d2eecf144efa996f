// Package weight estimates the volume of a cut stone, and so its weight, from
// its dimensions.
//
// A stone in a setting cannot be weighed. Its weight is then worked out from
// length, width and depth, in up to three ways:
//
//   - factor: length x width x depth times a number for the shape, the trade's
//     customary way. The number carries its own spread, since stones of one
//     shape are not cut alike.
//   - solid: the cut built as a body from table, crown, girdle and pavilion,
//     and its volume. Figures that were not measured enter with the spread
//     they have in the trade.
//   - fitted solid: the solid of a round brilliant whose unmeasured figures
//     were found on published dimensions of round diamonds.
//
// Every way gives a volume in cubic millimetres with its standard uncertainty,
// propagated as in JCGM 100 (the GUM) from the dimensions, the shape, the girdle
// and the bulge. The estimate is the way with the smallest uncertainty; where
// the ways differ by more than three times theirs, it says so.
//
// The package knows nothing of species. A weight comes from a volume and a
// range of specific gravity that the caller hands in:
//
//	carat = volume in mm3 x specific gravity / 200
//
// exactly, with a carat of 200 mg and specific gravity as density in g/cm3.
// The way back, from a weighed stone to the specific gravity that its
// dimensions imply, is ImpliedGravity.
//
// Dimensions that contradict one another are reported by Contradictions, with
// the slip that explains them best.
package weight
