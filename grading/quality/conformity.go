package quality

// A Conformity is a statement of conformity with a lower limit, with a guard
// band on both of its sides (ILAC-G8:09/2019, 4.2.3).
type Conformity string

// The statements. Without a guard band only pass and fail remain, with a risk
// of up to one half at the limit (4.2.1).
const (
	Pass            Conformity = "pass"
	ConditionalPass Conformity = "conditional pass"
	ConditionalFail Conformity = "conditional fail"
	Fail            Conformity = "fail"
)

// Conforms states whether a measured value conforms with a lower limit, the
// guard band w being usually the expanded uncertainty. The rule has to be agreed
// before measuring (ISO/IEC 17025, 7.1.3).
func Conforms(measured, limit, guard float64) Conformity {
	switch {
	case measured >= limit+guard:
		return Pass
	case measured >= limit:
		return ConditionalPass
	case measured > limit-guard:
		return ConditionalFail
	}
	return Fail
}
