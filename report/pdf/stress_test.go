package pdf

import (
	"image/color"
	"strings"

	"stonewrit/report"
)

// stressDocuments are documents that a layout could stumble over, by name.
func stressDocuments() map[string]report.Document {
	long := strings.Repeat("Wheatear & Ørsted, Δημήτριος Щербаков ", 8) // 300 characters and more
	unbroken := strings.Repeat("Donaudampfschifffahrtsgesellschaft", 9)
	docs := map[string]report.Document{
		"note":      sampleNote(),
		"appraisal": sampleAppraisal(),
		"empty":     {},
		"nothing but a name in the margin": {Title: "Record", Sections: []report.Section{
			{Name: "Empty"}, {Name: long}, {}, {Name: unbroken}, {Name: "Empty too", Blocks: []report.Block{report.Table{}, report.List{}, report.Para(nil), report.Photos{}, report.Sum{}, report.Claims{}, report.Lead{}}},
		}},
	}
	draft := sampleAppraisal()
	draft.Draft, draft.Number = true, ""
	docs["draft"] = draft
	docs["draft without photos"] = draftWithoutPhotos()

	for name, word := range map[string]string{"long names": long, "one word of 306 letters": unbroken} {
		doc := sampleNote()
		doc.Title, doc.Number, doc.End, doc.DateText = first(word, 60), "KL-"+first(word, 90), word, first(word, 40)
		doc.Practice.Name = word
		doc.Practice.Address, doc.Practice.Contact = []string{word, word}, []string{word}
		doc.Words.PageOf, doc.Words.Continued = "page {page} of altogether {pages} pages, "+first(word, 70), first(word, 80)
		doc.Sections = append(doc.Sections, stressSection(word))
		docs[name] = doc
	}

	shapes := sampleNote()
	shapes.Sections = append(shapes.Sections, report.Section{Name: "Twelve photos of odd shapes", Blocks: []report.Block{
		report.Photos{Photos: oddPhotos()}, report.Photos{Photos: oddPhotos(), Columns: 3}, report.Photos{Photos: oddPhotos(), Columns: 1}, report.Photos{Photos: oddPhotos()[:5], Columns: 4},
	}})
	docs["twelve photos"] = shapes

	tests := sampleNote()
	table := sampleTests()
	for len(table.Rows) < 30 {
		table.Rows = append(table.Rows, table.Rows[len(table.Rows)%5])
	}
	tests.Sections[3].Blocks = []report.Block{table}
	docs["thirty tests"] = tests

	one := sampleNote()
	table.Rows = table.Rows[:1]
	one.Sections[3].Blocks = []report.Block{table}
	docs["one test"] = one

	cells := sampleNote()
	cells.Sections = append(cells.Sections, report.Section{Name: "Forty rows of long cells", Blocks: []report.Block{longCells(40, false), longCells(12, true)}})
	docs["long cells"] = cells

	rows := sampleNote()
	rows.Sections = append(rows.Sections, report.Section{Name: "Pictures in rows", Blocks: []report.Block{picturesInRows(true), picturesInRows(false)}})
	docs["pictures in rows"] = rows

	letters := sampleNote()
	letters.Language = "el"
	letters.Sections = append(letters.Sections, report.Section{Name: "Ονόματα и имена", Blocks: []report.Block{
		report.Para(report.Plain("Ἀριστοτέλης Ὀνάσης, ᾧ ῥᾴδιον· Љубица Ђорђевић, Щукин, Ґалаґан, Қазақ; Łukasz Żółć, Jürgen Weiß, Þórðr, Ångström, Nguyễn Thị Ngọc, Čapková, Ọ̀ṣunbùnmi Adébáyọ̀.")),
		report.Bullets(report.Texts("Ελένη Παπαδοπούλου", "Ёлкина Ѣва", "Ğülşen İnönü", "Ñandú d’Été")...),
	}})
	docs["letters"] = letters
	return docs
}

func first(s string, n int) string { return string([]rune(s)[:n]) }

// stressSection has one of each block with a nasty text in all places.
func stressSection(word string) report.Section {
	text := report.Plain(word).Plain(" ").Strong(word).Quiet(word)
	bad := photo(400, 300, green, word)
	bad.Taken, bad.SHA256 = first(word, 30), strings.Repeat("0123456789abcdef", 4)
	return report.Section{Name: word, Blocks: []report.Block{
		report.Lead{Sentence: text, Photo: &bad, Margin: []report.MarginFigure{{Figure: first(word, 40), Note: text}, {Figure: word, Note: text}, {Figure: word, Note: text}}, Body: []report.Text{text, text}},
		report.Subhead(word), report.Para(text), report.Small(text), report.Bullets(text, text), report.List{Items: []report.Text{text, text}, Numbered: true, Small: true},
		report.Claims{Claims: []report.Claim{{Name: word, Statement: text, Mark: report.MarkStruck, Standing: word, Because: []report.Text{text, text, text}}, {Name: word, Mark: report.MarkOpen}}},
		report.Table{Columns: []report.Column{{Head: word}, {Head: word, Align: report.AlignRight}, {Head: word, Width: 1}}, Rows: []report.Row{
			{Cells: []report.Cell{{Text: text, Mark: report.MarkOpen}, {Text: text}, {Text: text}}, Note: text}, {Note: text}, {}, {Cells: []report.Cell{{Mark: report.MarkFilled}}},
		}},
		report.Sum{Lines: []report.SumLine{{Label: text, Working: text, Amount: word}, {Label: text, Working: text, Amount: word, Total: true}}},
		report.Signature{Name: word, Credentials: []string{word, word}, Date: word},
		report.Figure{Width: 480, Height: 40, Caption: text, Shapes: []report.Shape{report.Line{From: report.XY{X: 0, Y: 20}, To: report.XY{X: 480, Y: 20}}}},
	}}
}

func oddPhotos() []report.Photo {
	sizes := [][2]int{{400, 400}, {900, 68}, {68, 900}, {3, 3}, {320, 240}, {240, 320}, {1, 400}, {400, 1}, {300, 299}, {450, 250}, {64, 64}, {250, 450}}
	out := make([]report.Photo, len(sizes))
	for i, s := range sizes {
		out[i] = photo(s[0], s[1], color.RGBA{uint8(20 * i), 120, 160, 255}, strings.Repeat("A caption that goes on. ", 1+i%5))
	}
	return out
}

// picturesInRows is a table with pictures of odd shapes beside texts short and
// long, and rows without a picture or without a text.
func picturesInRows(wide bool) report.Table {
	t := report.Table{Wide: wide, Small: true, Columns: []report.Column{{}, {Head: "what", Width: 3}, {Head: "value", Align: report.AlignRight}}}
	for i, p := range append(oddPhotos(), oddPhotos()...) {
		row := report.Cells(nil, report.Plain(strings.Repeat("a stone among others, ", i%5*14)), report.Plainf("%d.00 EUR", i*i))
		if i%6 != 5 {
			row.Cells[0].Picture = &p.Image
		}
		t.Rows = append(t.Rows, row.Noted(report.Plain(strings.Repeat("noted below. ", i%3*20))))
	}
	t.Rows = append(t.Rows, report.Row{Cells: []report.Cell{{Picture: &oddPhotos()[0].Image}}})
	return t
}

// longCells is a table whose cells hold up to some two hundred words.
func longCells(rows int, wide bool) report.Table {
	t := report.Table{Wide: wide, Columns: []report.Column{{Head: "number", Align: report.AlignRight}, {Head: "short"}, {Head: "long", Width: 3}, {Head: "longer", Width: 2}}}
	for i := range rows {
		t.Rows = append(t.Rows, report.Cells(report.Plainf("%d.50", i*37), report.Plain("a word"), report.Plain(strings.Repeat("all of this was read twice; ", 1+i%7*3)),
			report.Plain(strings.Repeat("и ещё раз ", 1+i%11*6))).Noted(report.Plain(strings.Repeat("as noted ", i%5*12))))
	}
	return t
}
