package identify

import (
	"stonewrit/grading/gem"
	"stonewrit/grading/stone"
)

// enoughDirections is how many directions a stone must stay dark along before
// it is taken for singly refractive (common practice, from memory).
const enoughDirections = 3

// weakBirefringence is below what a stone may stay dark though it is doubly
// refractive (common practice, from memory).
const weakBirefringence = 0.003

func doubly(m *gem.Material) bool { return m.Optic == gem.Uniaxial || m.Optic == gem.Biaxial }

// polariscope judges what crossed polars show, with the known traps: a doubly
// refractive stone dark along its axis, strain that imitates double
// refraction, and fine aggregates that stay light.
func polariscope(t *stone.Polariscope, m *gem.Material, transparency string) finding {
	switch {
	case m.Optic == "":
		return unknown()
	case transparency == "opaque":
		return said(cannotTell, "no light passes an opaque stone")
	case m.Optic == gem.Opaque && (t.Sees == "blinks" || t.Figure == "uniaxial" || t.Figure == "biaxial"):
		return said(conflicts, "light passes the stone, and this material is opaque")
	case m.Optic == gem.Opaque:
		return said(cannotTell, "no light passes an opaque stone")
	}
	var f finding
	if t.Sees != "" {
		f = sees(t, m, transparency)
	}
	if fig := figure(t.Figure, m); t.Figure != "" && t.Figure != "none seen" {
		if f.verdict != conflicts && fig.verdict == agrees {
			return fig
		}
		f = worse(f, fig)
	}
	return f
}

func sees(t *stone.Polariscope, m *gem.Material, transparency string) finding {
	switch t.Sees {
	case "stays dark":
		return dark(t, m, transparency)
	case "blinks":
		switch {
		case doubly(m):
			return said(agrees, "blinks, as doubly refractive stones do")
		case m.Optic == gem.Isotropic:
			return said(cannotTell, "blinks, which strain in a singly refractive stone imitates")
		}
		return said(cannotTell, "blinks, which says little of an aggregate")
	case "strain pattern":
		if m.Optic == gem.Isotropic {
			return said(agrees, "a strain pattern, as singly refractive stones show")
		}
		return said(cannotTell, "a strain pattern, which doubly refractive stones may show too")
	}
	switch {
	case m.Optic == gem.Aggregate || m.Growth == gem.Composite:
		return said(agrees, "stays light, as aggregates and assembled stones do")
	case doubly(m):
		return said(cannotTell, "stays light, as in one direction or in twinned stones")
	case transparency == "transparent" && t.Orientations >= enoughDirections:
		return said(conflicts, "stays light in three directions or more, which a transparent singly refractive stone does not")
	}
	return said(cannotTell, "stays light, as translucent stones may")
}

func dark(t *stone.Polariscope, m *gem.Material, transparency string) finding {
	switch {
	case t.Orientations < enoughDirections:
		return said(cannotTell, "dark along fewer than three directions; a doubly refractive stone is dark along its axis")
	case m.Optic == gem.Isotropic:
		return said(agrees, "dark along three directions or more, as singly refractive stones are")
	case m.Optic == gem.Aggregate && transparency == "transparent":
		return said(conflicts, "transparent and dark along three directions or more, and a fine aggregate stays light")
	case doubly(m) && m.Birefringence.Min >= weakBirefringence:
		return said(conflicts, "dark along three directions or more, which a doubly refractive stone is not")
	}
	return said(cannotTell, "dark, and its birefringence may be too weak to see")
}

func figure(seen string, m *gem.Material) finding {
	switch seen {
	case "open centre", "bull's-eye":
		switch {
		case m.Name == "quartz" || m.Parent == "quartz":
			return said(agrees, "the figure with an open centre, which quartz alone shows")
		case m.Optic == gem.Aggregate:
			return said(cannotTell, "a figure says little of an aggregate")
		}
		return said(conflicts, "the figure with an open centre, which quartz alone shows")
	case "uniaxial":
		switch {
		case m.Optic == gem.Uniaxial:
			return said(agrees, "a uniaxial figure")
		case m.Optic == gem.Biaxial && !m.SmallAxialAngle, m.Optic == gem.Isotropic, m.Optic == gem.Aggregate:
			return said(conflicts, "a uniaxial figure")
		}
		return said(cannotTell, "a uniaxial figure, which a small axial angle may show")
	case "biaxial":
		switch {
		case m.Optic == gem.Biaxial:
			return said(agrees, "a biaxial figure")
		case m.Optic == gem.Uniaxial && m.Strain:
			return said(cannotTell, "a biaxial figure, which strain makes of its uniaxial one")
		}
		return said(conflicts, "a biaxial figure")
	}
	return said(cannotTell, "no figure was seen, which proves nothing")
}

// dichroscope judges the number of colours: three need a biaxial stone, two a
// doubly refractive one, none proves nothing.
func dichroscope(t *stone.Dichroscope, m *gem.Material) finding {
	colours, strength := len(t.Colours.Items), t.Strength
	clear := strength == "distinct" || strength == "strong"
	switch {
	case m.Optic == "":
		return unknown()
	case strength == "none" || colours < 2 && !clear:
		return said(cannotTell, "no second colour was seen, which proves nothing")
	case m.Optic == gem.Isotropic && clear:
		return said(conflicts, "distinct pleochroism, which a singly refractive stone has not")
	case m.Optic == gem.Isotropic:
		return said(cannotTell, "weak colours, which zoning, reflected light or strain imitate")
	case m.Optic == gem.Uniaxial && colours >= 3 && clear:
		return said(conflicts, "three colours, which only a biaxial stone has")
	case m.Optic == gem.Biaxial && colours >= 3:
		return said(agrees, "three colours, as biaxial stones may show")
	case doubly(m) && clear:
		return said(agrees, "two colours, as doubly refractive stones may show")
	}
	return said(cannotTell, "the colours are too weak to decide")
}
