package pdf

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"math"
	"sync"
	"time"

	"stonewrit/report"
)

// Everything in these documents is invented: practice, people, places, stones,
// readings and prices.

var sampleDate = time.Date(2026, 10, 14, 0, 0, 0, 0, time.UTC)

// drawnStone is a picture of a faceted round stone, drawn, not photographed.
func drawnStone(w, h int, hue color.RGBA) []byte {
	type key struct {
		w, h int
		hue  color.RGBA
	}
	if kept, ok := drawnStones.Load(key{w, h, hue}); ok {
		return kept.([]byte)
	}
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	cx, cy, r := float64(w)/2, float64(h)/2, 0.42*float64(min(w, h))
	for y := range h {
		for x := range w {
			dx, dy := (float64(x)-cx)/r, (float64(y)-cy)/r
			d, a := math.Hypot(dx, dy), math.Atan2(dy, dx)
			c := color.RGBA{236, 234, 230, 255}
			if d < 1 {
				light := 0.55 + 0.35*math.Cos(8*a+3*math.Floor(d*3)) - 0.2*d
				c = color.RGBA{shade(hue.R, light), shade(hue.G, light), shade(hue.B, light), 255}
			}
			img.SetRGBA(x, y, c)
		}
	}
	var b bytes.Buffer
	if err := jpeg.Encode(&b, img, &jpeg.Options{Quality: 85}); err != nil {
		panic(err)
	}
	drawnStones.Store(key{w, h, hue}, b.Bytes())
	return b.Bytes()
}

// drawnStones keeps what drawnStone has drawn, since it takes its time.
var drawnStones sync.Map

func shade(v uint8, light float64) uint8 {
	return uint8(min(255, max(0, float64(v)*light+70*light*light)))
}

// drawnLogo is a small PNG with transparency.
func drawnLogo() []byte {
	img := image.NewNRGBA(image.Rect(0, 0, 120, 120))
	for y := range 120 {
		for x := range 120 {
			dx, dy := float64(x)-60, float64(y)-60
			if d := math.Abs(dx) + math.Abs(dy); d < 56 && d > 44 || math.Abs(dx) < 3 && math.Abs(dy) < 44 {
				img.SetNRGBA(x, y, color.NRGBA{31, 61, 82, 255})
			}
		}
	}
	var b bytes.Buffer
	if err := png.Encode(&b, img); err != nil {
		panic(err)
	}
	return b.Bytes()
}

func drawnSignature() []byte {
	img := image.NewNRGBA(image.Rect(0, 0, 360, 90))
	for i := range 3000 {
		t := float64(i) / 3000
		x := 15 + 330*t
		y := 45 + 28*math.Sin(22*t)*math.Exp(-1.5*t) + 8*math.Sin(61*t)
		for dy := range 3 {
			img.SetNRGBA(int(x), int(y)+dy, color.NRGBA{20, 24, 60, 255})
		}
	}
	var b bytes.Buffer
	if err := png.Encode(&b, img); err != nil {
		panic(err)
	}
	return b.Bytes()
}

func samplePractice() report.Practice {
	return report.Practice{
		Name:    "Kestrel Lane Gem Room",
		Address: []string{"4 Kestrel Lane", "Ostmarsh OM2 7QF"},
		Contact: []string{"telephone 0155 5010 220", "bench@kestrel-lane.example"},
		Logo:    &report.Image{Data: drawnLogo(), Alt: "mark of the practice"},
	}
}

func photo(w, h int, hue color.RGBA, caption string) report.Photo {
	return report.Photo{
		Image:   report.Image{Data: drawnStone(w, h, hue), Alt: "drawing of a round stone from above"},
		Caption: report.Plain(caption), MMPerPixel: 9.3 / float64(min(w, h)), Taken: "14 October 2026",
		SHA256: "9f2c66d0a14be7735b1e08c4d7aa9015f3de77120bb4c6a9e0d15f6b2c8a4471",
	}
}

var (
	red   = color.RGBA{190, 20, 50, 255}
	green = color.RGBA{40, 150, 90, 255}
	blue  = color.RGBA{50, 80, 190, 255}
)

// sampleNote is a stone note of two pages.
func sampleNote() report.Document {
	lead := photo(400, 350, red, "Face up, daylight lamp. A drawing made for this example.")
	return report.Document{
		Kind: "note", Title: "Stone note", Language: "en",
		Number: "KL-2026-000417-62", UUID: "3b0c8f52-6f0e-4b4e-9a55-0e2b6a0f7d11",
		Date: sampleDate, DateText: "14 October 2026",
		Practice: samplePractice(),
		End:      "End of stone note KL-2026-000417-62",
		Metadata: report.Metadata{
			Author: "A. Okafor", Subject: "Stone note on one loose stone", Keywords: []string{"corundum", "ruby"},
			Program: "stonewrit", Digest: "9f2c66d0a14be7735b1e08c4d7aa9015f3de77120bb4c6a9e0d15f6b2c8a4471",
		},
		Attachments: []report.Attachment{
			{Name: "kl-0417.yaml", Type: "application/yaml", Description: "the stone file as examined", Data: []byte("stonewrit: 1\nstone: KL-0417\n")},
			{Name: "kl-0417.json", Type: "application/json", Description: "the examined stone", Data: []byte(`{"stone":"KL-0417"}`)},
		},
		Sections: []report.Section{
			{Blocks: []report.Block{report.Lead{
				Sentence: report.Plain("This stone is a ruby, by our tests, and it has been heated. Whether it grew in nature they leave undecided."),
				Photo:    &lead,
				Margin: []report.MarginFigure{
					{Figure: "1.520\u00a0ct", Note: report.Plain("weighed loose")},
					{Figure: "8.00\u00a0mm", Note: report.Plain("length; 6.20\u00a0mm wide, 3.75\u00a0mm deep")},
				},
				Body: []report.Text{
					report.Plain("The stone is an oval brilliant, 8.00 by 6.20 by 3.75\u00a0mm, and was weighed at 1.520\u00a0ct on a balance checked that morning. Reckoned from its measurements alone it would weigh between 1.40 and 1.58\u00a0ct, which agrees."),
					report.Plain("It was brought by the client as one loose stone in a paper marked “").Italic("σμαραγδένιο κουτί, Θεσσαλονίκη").Plain("”, and all that is said here is of that stone alone."),
				},
			}}},
			{Name: "On what ground", Blocks: []report.Block{sampleClaims(), report.Small(report.Plain("Materials that these tests do not exclude: none of another species."))}},
			{Name: "The evidence, drawn", Blocks: []report.Block{sampleRuler(), sampleMaking()}},
			{Name: "The tests", Blocks: []report.Block{sampleTests()}},
			{Name: "Description, treatment and care", Blocks: []report.Block{
				report.Para(report.Plain("Strong red, seen face up by daylight lamp (D65); even in colour; eye clean, with fine inclusions seen under ten times magnification. Girdle medium, polish without scratches visible to the eye.")),
				report.Para(report.Strong("Heated. ").Plain("Rutile silk is partly dissolved and small crystals carry tension halos, which shows heating to a high temperature. Heating of this kind is lasting and needs no special care. Nothing that shows filling of fissures was seen; these tests cannot show ").Italic("heating at a low temperature").Plain(".")),
				report.Bullets(
					report.Plain("Clean in warm water with a little soap and a soft brush."),
					report.Plain("Keep from sudden heat; take the stone out before soldering."),
					report.Plain("Ultrasonic and steam cleaning: no, since fissures reach the surface."),
				),
			}},
			{Name: "Limits", Blocks: []report.Block{
				report.Small(report.Plain("A verdict rests on the distance d of the value from the published range and its standard uncertainty u: it agrees where d is at most 2u and the value is sharp enough to mean something, conflicts where d is more than 3u, and cannot tell otherwise. This guards against contradicting a right name; it does not bound the risk of agreeing with a wrong one, which is why other materials are named. Uncertainties after ± are for a coverage factor k = 2, about 95 in 100.")),
				report.Small(report.Plain("The results are of the item examined and of no other. No infrared or Raman spectrum was taken. Where the stone was found has not been determined. This note gives no value. Please copy it whole or not at all.")),
			}},
			{Name: "How to verify", Blocks: []report.Block{
				report.Paragraph{Small: true, KeepNext: true, Text: report.Plain("Number KL-2026-000417-62; the last two digits check the others (ISO/IEC 7064, MOD 97-10). The stone file travels inside this document; its SHA-256 is 9f2c66d0a14be7735b1e08c4d7aa9015f3de77120bb4c6a9e0d15f6b2c8a4471.")},
				report.Signature{
					Image: &report.Image{Data: drawnSignature(), Alt: "signature of A. Okafor"}, Name: "Adaeze Okafor",
					Credentials: []string{"examiner; diploma in gemmology, Ostmarsh College, 2011"}, Date: "Ostmarsh, 14 October 2026",
				},
			}},
		},
	}
}

func sampleClaims() report.Claims {
	return report.Claims{Claims: []report.Claim{
		{Name: "Species", Statement: report.Plain("corundum"), Mark: report.MarkFilled, Standing: "supported", Because: report.Texts(
			"Refractometer and weighing in water agree, and both tell corundum from most other gem materials.",
			"The spectroscope shows the lines of chromium in corundum.")},
		{Name: "Variety", Statement: report.Plain("ruby"), Mark: report.MarkFilled, Standing: "supported", Because: report.Texts(
			"Red by daylight, coloured by chromium. Where ruby ends and pink sapphire begins is a convention; here: medium tone and darker.")},
		{Name: "Growth", Statement: report.Plain("natural"), Mark: report.MarkOpen, Standing: "undecided", Because: report.Texts(
			"Partly dissolved silk suggests natural growth. Index and specific gravity say nothing of it.")},
		{Name: "Treatment", Statement: report.Plain("none named by the seller"), Mark: report.MarkStruck, Standing: "contradicted", Because: report.Texts(
			"Tension halos around crystals under 40 times, darkfield, show high heat.",
			"The examiner writes: “the seller's slip says untreated; the client was told.”")},
	}}
}

func sampleTests() report.Table {
	row := func(test, read, value string, m report.Mark, verdict, why, note string) report.Row {
		return report.Row{
			Cells: []report.Cell{{Text: report.Plain(test)}, {Text: report.Plain(read)}, {Text: report.Plain(value)}, report.Marked(m, verdict), {Text: report.Plain(why)}},
			Note:  report.Plain(note),
		}
	}
	return report.Table{
		Small: true, Wide: true,
		Columns: []report.Column{
			{Head: "test", Width: 1.2}, {Head: "as read", Width: 1.7}, {Head: "value, k = 2", Width: 1.5}, {Head: "verdict"}, {Head: "why", Width: 2.2},
		},
		Rows: []report.Row{
			row("refractometer", "1.762 – 1.770, four turns", "1.7613 and 1.7693 ± 0.0022; birefringence 0.0080", report.MarkFilled, "agrees", "both edges and their difference lie in the range of corundum", "refractometer-1, sodium light, 21.5 °C; checked on quartz 2 October 2026"),
			row("specific gravity", "0.3040 g in air, 0.2281 g in water", "3.993 ± 0.032", report.MarkFilled, "agrees", "range of corundum 3.95 to 4.05", "balance-1, water at 21.5 °C; checked with 5 g on 14 October 2026"),
			row("spectroscope", "694, 692, 668, 659, 476, 468 nm", "", report.MarkFilled, "agrees", "chromium in corundum", "prism, incandescent light"),
			row("ultraviolet", "long wave: strong red; short wave: moderate red", "", report.MarkOpen, "cannot tell", "shared by laboratory-grown ruby", "lamp-1, 365 and 254 nm, seen through a filter that keeps ultraviolet from the eyes"),
			row("magnification", "partly dissolved silk; tension halo around crystal", "", report.MarkStruck, "conflicts", "with “untreated”: shows high heat", "stereo microscope, 40×, darkfield"),
		},
	}
}

// sampleRuler is a ruler of index with one tick for the stone.
func sampleRuler() report.Figure {
	fig := report.Figure{Width: 372, Height: 70, Caption: report.Plain("Refractive index of this stone, with its uncertainty, on the ruler of gem materials."), Alt: "A ruler from 1.70 to 1.80. The stone lies at 1.761 to 1.769, within the range of corundum; spinel lies apart at 1.718."}
	x := func(n float64) report.Point { return report.Point(8 + (n-1.70)/0.10*356) }
	base := report.Point(34)
	fig.Shapes = append(fig.Shapes, report.Line{From: report.XY{X: x(1.70), Y: base}, To: report.XY{X: x(1.80), Y: base}})
	for i := range 11 {
		n := 1.70 + 0.01*float64(i)
		tick := report.Point(3)
		if i%5 == 0 {
			tick = 5
			fig.Shapes = append(fig.Shapes, report.Label{At: report.XY{X: x(n), Y: base - 8}, Text: report.Plain(fmt.Sprintf("%.2f", n)), Anchor: report.AnchorMiddle})
		}
		fig.Shapes = append(fig.Shapes, report.Line{From: report.XY{X: x(n), Y: base - tick}, To: report.XY{X: x(n), Y: base}, Pen: report.Pen{Width: report.Hairline}})
	}
	for _, n := range []float64{1.7613, 1.7693} {
		fig.Shapes = append(fig.Shapes,
			report.Line{From: report.XY{X: x(n), Y: base - 22}, To: report.XY{X: x(n), Y: base}, Pen: report.Pen{Width: report.Thick, Accent: true}},
			report.Polyline{Points: []report.XY{{X: x(n - .0022), Y: base - 15}, {X: x(n - .0022), Y: base - 18}, {X: x(n + .0022), Y: base - 18}, {X: x(n + .0022), Y: base - 15}}, Pen: report.Pen{Width: report.Hairline, Accent: true}})
	}
	fig.Shapes = append(fig.Shapes, report.Label{At: report.XY{X: x(1.7653), Y: 7}, Text: report.Strong("this stone"), Anchor: report.AnchorMiddle})
	extent := func(name string, lo, hi float64, y report.Point) {
		fig.Shapes = append(fig.Shapes,
			report.Polyline{Points: []report.XY{{X: x(lo), Y: y - 3}, {X: x(lo), Y: y}, {X: x(hi), Y: y}, {X: x(hi), Y: y - 3}}, Pen: report.Pen{Width: report.Thin}},
			report.Label{At: report.XY{X: x((lo + hi) / 2), Y: y + 9}, Text: report.Plain(name), Anchor: report.AnchorMiddle})
	}
	extent("corundum", 1.759, 1.774, base+7)
	extent("spinel", 1.712, 1.720, base+7)
	extent("garnet, pyrope to almandine", 1.730, 1.766, base+22)
	return fig
}

// sampleMaking is the profile of the cut, drawn like a workshop drawing: section
// hatched, dimensions in millimetres, one angle.
func sampleMaking() report.Figure {
	fig := report.Figure{Width: 372, Height: 94, Caption: report.Plain("Making drawing, five times life size: section along the length, millimetres."), Alt: "Section of the stone: 8.00 mm long, 3.75 mm deep; crown 1.20 mm, pavilion angle along the length 31 degrees."}
	mm := report.Millimetres(5)
	at := func(x, y float64) report.XY { return report.XY{X: 70 + report.Point(x)*mm, Y: 22 + report.Point(y)*mm} }
	fig.Shapes = append(fig.Shapes, report.Polygon{
		Points: []report.XY{at(1.7, 0), at(6.3, 0), at(8, 1.2), at(8, 1.36), at(4, 3.75), at(0, 1.36), at(0, 1.2)},
		Pen:    report.Pen{Width: report.Thick / 1.4}, Fill: report.Fill{Hatch: 5, Angle: 45},
	})
	thin := report.Pen{Width: report.Hairline}
	dimension := func(from, to report.XY, label string, turn float64) {
		fig.Shapes = append(fig.Shapes, report.Line{From: from, To: to, Pen: thin})
		for _, end := range []report.XY{from, to} {
			fig.Shapes = append(fig.Shapes, report.Line{From: report.XY{X: end.X - 2, Y: end.Y + 2}, To: report.XY{X: end.X + 2, Y: end.Y - 2}, Pen: report.Pen{Width: report.Thin}})
		}
		middle := report.XY{X: (from.X+to.X)/2 - report.Point(turn/90)*3, Y: (from.Y+to.Y)/2 - report.Point(1-turn/90)*3}
		fig.Shapes = append(fig.Shapes, report.Label{At: middle, Text: report.Plain(label), Anchor: report.AnchorMiddle, Turn: turn})
	}
	ahead := func(p report.XY, dx, dy report.Point) report.XY { return report.XY{X: p.X + dx, Y: p.Y + dy} }
	dimension(ahead(at(0, 0), 0, -10), ahead(at(8, 0), 0, -10), "8.00", 0)
	dimension(ahead(at(8, 3.75), 22, 0), ahead(at(8, 0), 22, 0), "3.75", 90)
	dimension(ahead(at(0, 1.2), -16, 0), ahead(at(0, 0), -16, 0), "1.20", 90)
	for _, p := range [][2]report.XY{{at(0, 1.1), ahead(at(0, 0), 0, -13)}, {at(8, 1.1), ahead(at(8, 0), 0, -13)}, {at(6.4, 0), ahead(at(8, 0), 25, 0)}, {at(4.1, 3.75), ahead(at(8, 3.75), 25, 0)}, {at(1.6, 0), ahead(at(0, 0), -19, 0)}, {at(-.1, 1.2), ahead(at(0, 1.2), -19, 0)}} {
		fig.Shapes = append(fig.Shapes, report.Line{From: p[0], To: p[1], Pen: thin})
	}
	fig.Shapes = append(fig.Shapes,
		report.Arc{Center: at(0, 1.36), RX: 34, RY: 34, From: -31, To: 0, Pen: thin},
		report.Line{From: at(-.2, 1.36), To: at(3, 1.36), Pen: report.Pen{Width: report.Hairline, Dash: []report.Point{4, 2}}},
		report.Label{At: ahead(at(4, 3.75), 0, 13), Text: report.Plain("pavilion 31° along the length"), Anchor: report.AnchorMiddle})
	return fig
}

// sampleAppraisal is an appraisal on Letter paper, with forty comparables.
func sampleAppraisal() report.Document {
	doc := sampleNote()
	lead := photo(350, 400, blue, "The ring from above. A drawing made for this example.")
	doc.Kind, doc.Title, doc.Paper = "appraisal", "Appraisal for insurance", report.Letter
	doc.Number, doc.End = "KL-2026-000418-59", "End of appraisal KL-2026-000418-59"
	doc.Sections = []report.Section{
		{Blocks: []report.Block{report.Lead{
			Sentence: report.Plain("A sapphire in a ring of gold, for which we conclude an insurance replacement value of 6\u202f400 euros on 14 October 2026."),
			Photo:    &lead,
			Margin: []report.MarginFigure{
				{Figure: "2.9 to 3.3\u00a0ct", Note: report.Plain("estimated in the setting")},
				{Figure: "6\u202f400 EUR", Note: report.Plain("replacement by a like ring, new, tax included")},
			},
			Body: []report.Text{
				report.Plain("The stone is set and could not be weighed. From its measured 9.1 by 7.2\u00a0mm and a depth of 5.0\u00a0mm seen through the open setting it is reckoned at 3.1\u00a0ct, between 2.9 and 3.3\u00a0ct 95 times in 100."),
				report.Plain("Prepared for Ms Kaja Ørsted-Łęcka, 11 Mill Walk, Ostmarsh, and for the insurer she names; for insurance replacement and no other use."),
			},
		}}},
		{Name: "On what ground", Blocks: []report.Block{sampleClaims()}},
		{Name: "Worth", Blocks: []report.Block{
			report.Para(report.Plain("Replacement value here means the price for which a like ring, new, could be bought from an ordinary retailer in the client's town within a month. It is not what the ring would bring if sold.")),
			report.Subhead("Comparables"),
			comparables(40),
			report.Subhead("The arithmetic"),
			sampleSum(),
			report.Para(report.Plain("The cost and the market approach were used; income was left out because the ring earns none. The conclusion rests on the market approach, since enough sales of like stones are on record.")),
			report.Paragraph{Text: report.Plain("I have no present or future interest in the ring. My fee is fixed and does not depend on the value. I examined the ring myself."), KeepNext: true},
			report.Signature{Name: "Adaeze Okafor", Credentials: []string{"appraiser; diploma in gemmology, Ostmarsh College, 2011"}, Date: "Ostmarsh, 14 October 2026"},
		}},
		{Name: "Photos", Blocks: []report.Block{report.Photos{Photos: []report.Photo{
			photo(480, 360, blue, "Through the table."), photo(360, 480, blue, "From the side; the setting is open below."),
			photo(540, 180, blue, "The shank with its mark 750."), photo(400, 400, green, "The same stone by incandescent light: no change of colour worth the name."),
		}}}},
	}
	return doc
}

func sampleSum() report.Sum {
	return report.Sum{Lines: []report.SumLine{
		{Label: report.Plain("Sapphire"), Working: report.Plain("3.1 ct, estimated, at 1 490.00 a carat"), Amount: "4 619.00"},
		{Label: report.Plain("Gold of 750 in 1000"), Working: report.Plain("4.20 g net, 3.15 g fine at 71.40"), Amount: "224.91"},
		{Label: report.Plain("Making and setting"), Working: report.Plain("as quoted"), Amount: "540.00"},
		{Label: report.Plain("Sum"), Amount: "5 383.91", Total: true},
		{Label: report.Plain("Tax"), Working: report.Plain("19 per cent"), Amount: "1 022.94"},
		{Label: report.Plain("Concluded, to the nearest 50"), Amount: "6 400.00 EUR", Total: true},
	}}
}

func comparables(n int) report.Table {
	t := report.Table{Small: true, Columns: []report.Column{
		{Head: "no.", Align: report.AlignRight}, {Head: "what", Width: 3}, {Head: "when"},
		{Head: "carat", Align: report.AlignRight}, {Head: "a carat, EUR", Align: report.AlignRight}, {Head: "adjusted", Align: report.AlignRight},
	}}
	what := []string{"oval sapphire, blue, heated, retail", "sapphire, cushion, a little paler; asked, not sold, by a dealer in the next town", "oval sapphire in a like ring"}
	for i := range n {
		price := 1200 + 37*i%411
		t.Rows = append(t.Rows, report.Cells(report.Plainf("%d", i+1), report.Plain(what[i%3]), report.Plainf("%d %s 2026", 1+i%28, []string{"May", "June", "July"}[i%3]),
			report.Plainf("%.2f", 2.4+0.05*float64(i%20)), report.Plainf("%d.00", price), report.Plainf("%.2f", float64(price)*0.95)))
	}
	return t
}
