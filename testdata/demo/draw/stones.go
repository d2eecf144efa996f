package main

// plate is one picture to be drawn.
type plate struct {
	name, what  string
	things      []thing
	view        view
	scale, tick float64 // millimetres a pixel; length of the scale tick
	shadow      shadow
}

// loose is a faceted stone by itself.
type loose struct {
	ref, what            string
	cut                  cut
	outline              func(length, width float64) outline
	length, width, depth float64 // mm
	index, fire          float64
	through              vec     // colour of white light after twice the depth
	scale                float64 // mm a pixel
}

// looseStones: sizes are the demo's own; indices are round figures for the look
// of the picture alone.
func looseStones() []loose {
	return []loose{
		{"HL-0401", "oval sapphire", mixed(), oval, 8.1, 6.4, 4.1, 1.766, 0, vec{0.05, 0.12, 0.62}, 0.0125},
		{"HL-0403", "round brilliant diamond", brilliant(), oval, 6.5, 6.5, 3.95, 2.417, 0.044, vec{0.97, 0.96, 0.93}, 0.01},
		{"HL-0407", "cushion tourmaline", mixed(), cushion, 8.4, 7.6, 5.1, 1.63, 0, vec{0.06, 0.40, 0.17}, 0.0125},
		{"HL-0408", "octagonal spinel", stepped(), octagonOf, 7.0, 5.9, 4.0, 1.718, 0, vec{0.70, 0.045, 0.07}, 0.0125},
		{"HL-0410", "pear of glass", brilliant(), pear, 11.0, 7.5, 4.8, 1.52, 0, vec{0.66, 0.03, 0.07}, 0.016},
		{"HL-0411", "oval amethyst", brilliant(), oval, 14.0, 10.0, 6.6, 1.548, 0, vec{0.30, 0.09, 0.50}, 0.02},
		{"HL-0412", "oval ruby", mixed(), oval, 8.0, 6.2, 3.75, 1.766, 0, vec{0.62, 0.015, 0.055}, 0.0125},
		{"HL-0501", "oval aquamarine", mixed(), oval, 9.5, 7.5, 4.7, 1.58, 0, vec{0.55, 0.86, 0.93}, 0.0125},
		{"HL-0413", "round blue spinel", brilliant(), oval, 8.0, 8.0, 5.0, 1.728, 0, vec{0.03, 0.14, 0.72}, 0.0125},
	}
}

func octagonOf(length, width float64) outline { return octagon(length, width, width*0.26) }

func plates() []plate {
	var out []plate
	for _, s := range looseStones() {
		out = append(out, s.face(), s.side())
	}
	star := []thing{&smooth{a: 4.7, b: 3.9, above: 3.5, below: 1.3, paint: starred(vec{0.27, 0.008, 0.055}, 4.3)}}
	opal := []thing{&smooth{a: 6, b: 4.5, above: 2.9, below: 0.9, paint: opaline(2.1)}}
	above, soft, lying := fromAbove(), shadow{right: 0.4, down: 0.5, soft: 0.3}, shadow{soft: 0.25, foot: 0.5, fades: 2}
	standing := shadow{soft: 0.5, foot: 1.3, fades: 4}
	return append(out,
		plate{"HL-0402-face", "emerald in a ring, from above", emeraldRing(), above, 0.02, 5, shadow{right: 0.7, down: 0.9, soft: 0.5}},
		plate{"HL-0402-side", "emerald in a ring, from the side", emeraldRing(), fromSide(11), 0.035, 10, standing},
		plate{"HL-0404-face", "row of diamonds in a ring, from above", diamondRow(), above, 0.02, 5, shadow{right: 0.6, down: 0.8, soft: 0.5}},
		plate{"HL-0404-side", "row of diamonds in a ring, from the side", diamondRow(), fromSide(9.6), 0.03, 5, standing},
		plate{"HL-0405-face", "star ruby from above", star, above, 0.0125, 5, soft},
		plate{"HL-0405-side", "star ruby from the side", star, fromSide(-0.8), 0.0125, 5, lying},
		plate{"HL-0406-face", "opal from above", opal, above, 0.016, 5, soft},
		plate{"HL-0406-side", "opal from the side", opal, fromSide(-0.6), 0.016, 5, lying},
		plate{"HL-0409-face", "strand of pearls from above", strand(), above, 0.16, 20, shadow{right: 1.2, down: 1.8, soft: 1.2}},
		plate{"HL-0500-face", "aquamarine between diamonds in a ring, from above", aquamarineRing(), above, 0.02, 5, shadow{right: 0.7, down: 0.9, soft: 0.5}},
		plate{"HL-0500-side", "aquamarine between diamonds in a ring, from the side", aquamarineRing(), fromSide(11), 0.035, 10, standing},
		plate{"HL-0409-side", "part of the strand from the side", pearlRow(), fromSide(-3), 0.03, 5, shadow{soft: 0.4, foot: 1.2, fades: 2.5}},
	)
}

func (s loose) gem() *gem {
	return &gem{
		body:  s.cut.build(s.outline(s.length, s.width), s.width, s.depth),
		reach: s.length, index: s.index, fire: s.fire,
		loss: absorbing(s.through, 2*s.depth), below: 0.75,
	}
}

func (s loose) face() plate {
	return plate{s.ref + "-face", s.what + " from above", []thing{s.gem()}, fromAbove(), s.scale, 5,
		shadow{right: 0.05 * s.width, down: 0.07 * s.width, soft: 0.04 * s.width}}
}

func (s loose) side() plate {
	return plate{s.ref + "-side", s.what + " from the side", []thing{s.gem()}, fromSide(0.1 * s.depth), s.scale, 5,
		shadow{soft: 0.03 * s.width, foot: 0.07 * s.width, fades: s.depth}}
}
