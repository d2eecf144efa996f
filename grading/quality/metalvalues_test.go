package quality

import (
	"fmt"
	"strconv"
	"strings"
)

func metalAnswers(g *Grader) map[string]func() string {
	lowest := func(metal string, claimed float64, sample Sample) float64 {
		for _, j := range g.JudgeFineness(metal, claimed, claimed, sample) {
			if strings.HasPrefix(j.Law, "15 USC") {
				return j.Lowest
			}
		}
		return 0
	}
	shortfall := func(metal string, sample Sample) func() string {
		return func() string { return plain(1000 - lowest(metal, 1000, sample)) }
	}
	leastSilver := func(word string) func() string {
		return func() string {
			for n := 1; n <= 1000; n++ {
				if len(g.RefusedMetal(word, Metal{Name: "silver", PerMille: float64(n)})) == 0 {
					return strconv.Itoa(n)
				}
			}
			return "none"
		}
	}
	classes := func(metal string) func() string {
		return func() string {
			return strings.Trim(strings.Join(strings.Fields(fmt.Sprint(g.Classes(metal))), ";"), "[]")
		}
	}
	mark := func(measured float64) func() string {
		return func() string { c, _ := g.MarkAllowed("gold", measured); return strconv.Itoa(c) }
	}
	sterling := Metal{Name: "silver", PerMille: 925}
	vermeilFrom := func(step float64, may func(v float64) bool) func() string {
		return func() string {
			for n := 1; n < 1000; n++ {
				if v := float64(n) * step; may(v) {
					return plain(v)
				}
			}
			return "none"
		}
	}
	answers := map[string]func() string{
		"shortfall allowed, part tested holds no solder":                                         shortfall("gold", PartWithoutSolder),
		"shortfall allowed, whole article assayed with solder, other than watchcase or flatware": shortfall("gold", WholeArticle),
		"shortfall allowed, whole watchcase or flatware with solder":                             shortfall("gold", WholeWatchcase),
		"shortfall allowed, no solder":                                                           shortfall("silver", PartWithoutSolder),
		"shortfall allowed, whole article with solder":                                           shortfall("silver", WholeArticle),
		"'sterling', 'solid silver'": func() string {
			if a, b := leastSilver("sterling")(), leastSilver("solid silver")(); a != b {
				return a + " and " + b
			}
			return leastSilver("sterling")()
		},
		"'coin silver'": leastSilver("coin silver"),
		"'silver' unqualified": func() string {
			m := Metal{Name: "silver", PerMille: 750}
			if len(g.RefusedMetal("silver", m)) == 0 {
				return "silver accepted"
			}
			return "needs fineness figure directly before, e.g. " + g.MetalName(m)
		},
		"base metal": func() string {
			if len(g.NoVermeil(Metal{Name: "silver", PerMille: 924}, 24, 5)) > 0 && len(g.NoVermeil(sterling, 24, 5)) == 0 {
				return "sterling silver"
			}
			return "another"
		},
		"gold layer thickness everywhere, as fine gold": vermeilFrom(0.1, func(v float64) bool { return len(g.NoVermeil(sterling, 24, v)) == 0 }),
		"gold layer fineness":                           vermeilFrom(1, func(v float64) bool { return len(g.NoVermeil(sterling, v, 5)) == 0 }),
		"'platinum' unqualified": func() string {
			for n := 1; n <= 1000; n++ {
				if len(g.RefusedMetal("platinum", Metal{Name: "platinum", PerMille: float64(n)})) == 0 {
					return strconv.Itoa(n)
				}
			}
			return "none"
		},
		"gold": classes("gold"), "silver": classes("silver"), "platinum": classes("platinum"), "palladium": classes("palladium"),
		"negative tolerance": func() string {
			j := g.JudgeFineness("palladium", 950, 949.9, WholeArticle)
			return plain(950 - j[0].Lowest)
		},
		"gold measured 588, mark allowed": mark(588),
		"gold measured 584, mark allowed": mark(584),
		"Finland lowest: gold; silver; platinum; palladium": func() string {
			return four(func(metal string) float64 { v, _ := g.LowestFineness("Finland", metal); return v }, 4)
		},
		"mass below which no hallmark is needed: gold; silver; platinum": func() string {
			return four(func(metal string) float64 { v, _ := g.HallmarkExempt("United Kingdom", metal); return v }, 3)
		},
		"mass below which no hallmark is needed: palladium": func() string {
			v, _ := g.HallmarkExempt("United Kingdom", "palladium")
			return plain(v)
		},
		"simple acceptance guard band": func() string {
			for measured, want := range map[float64]Conformity{585: Pass, 584.999: Fail} {
				if Conforms(measured, 585, 0) != want {
					return "another"
				}
			}
			return "0"
		},
		"risk of wrong acceptance at the limit under simple acceptance": figure(g.limit("simple acceptance risk")),
	}
	for _, k := range []float64{8, 9, 10, 12, 14, 18, 22, 24} {
		answers[plain(k)+" K"] = func() string { return plain(PerMille(k)) }
	}
	for _, k := range []float64{10, 14, 18} {
		answers[plain(k)+" K lowest fineness, no solder"] = func() string { return plain(lowest("gold", PerMille(k), PartWithoutSolder)) }
		answers[plain(k)+" K lowest fineness, whole article"] = func() string { return plain(lowest("gold", PerMille(k), WholeArticle)) }
	}
	for _, measured := range []float64{587, 586, 584, 582} {
		answers[fmt.Sprintf("lower limit 585; guard band w = U = 2.0; measured %.1f", measured)] = func() string { return string(Conforms(measured, 585, 2)) }
	}
	return answers
}

// four lists a figure for the first n of the four precious metals.
func four(of func(metal string) float64, n int) string {
	var list []string
	for _, metal := range []string{"gold", "silver", "platinum", "palladium"}[:n] {
		list = append(list, plain(of(metal)))
	}
	return strings.Join(list, ";")
}
