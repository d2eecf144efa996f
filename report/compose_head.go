package report

import (
	"crypto/sha256"
	"encoding/hex"
	"path"
	"slices"
	"strconv"
	"strings"

	"stonewrit/templates"
)

// head is the document without its sections.
func (c *composer) head() Document {
	title := c.line("title", c.kind)
	doc := Document{
		Kind: c.s.Report, Title: title, Language: c.w.Language(),
		Number: c.Number, UUID: c.UUID, Draft: c.Draft, Short: c.short,
		Date: c.Issued, DateText: c.date(c.Issued),
		Practice: Practice{Name: c.b.Practice.Name, Address: lines(c.b.Practice.Address), Contact: lines(c.b.Practice.Contact), Logo: c.described(c.Logo, "alt.logo", templates.None{})},
		Paper:    map[string]Paper{"Letter": Letter}[c.b.Page],
		Accent:   accent(c.b.Accent),
		End:      c.line("ending", templates.Ending{Title: title, Number: c.Number}),
		Words: Words{
			PageOf: c.line("layout.pageof", templates.None{}), Draft: c.line("layout.draft", templates.None{}), DraftNote: c.line("layout.draftnote", templates.None{}),
			Unnumbered: c.line("layout.unnumbered", templates.None{}), Continued: c.line("layout.continued", templates.None{}),
		},
		Metadata: Metadata{
			Author: c.examiner(), Subject: c.line("metadata.subject", c.subject), Keywords: c.keywords(), Program: c.Program, Digest: digest(c.StoneFile), Stones: c.stoneDigests(), Examined: digest(c.JSON),
		},
		Attachments: c.attachments(),
	}
	if c.Copy {
		doc.Draft = true
		doc.Words.Draft, doc.Words.DraftNote = c.line("layout.copy", templates.None{}), c.line("layout.copynote", templates.None{})
	}
	if c.Number == "" {
		doc.End = c.line("ending.draft", templates.None{})
	}
	return doc
}

// examiner is the name of who examined, or the word of the stone file where the
// bench file does not know it.
func (c *composer) examiner() string { return c.person(c.s.Examiner) }

func (c *composer) person(id string) string {
	if p, ok := c.b.Examiners[id]; ok && p.Name != "" {
		return p.Name
	}
	return id
}

func (c *composer) keywords() []string {
	var list []string
	for _, m := range []string{c.opinion().speciesName(), c.opinion().varietyName()} {
		if m != "" && !slices.Contains(list, m) {
			list = append(list, m)
		}
	}
	return list
}

// The names of the attached files.
func (c *composer) stoneFileName() string {
	file := c.s.File()
	if c.p != nil {
		file = c.p.Piece.File()
	}
	return path.Base(strings.ReplaceAll(file, "\\", "/"))
}

func (c *composer) jsonName() string {
	name := c.stoneFileName()
	return strings.TrimSuffix(name, path.Ext(name)) + ".json"
}

func (c *composer) stoneDigests() []string {
	var list []string
	for i := range c.withFiles() {
		if src := c.Set[i].StoneFile; len(src) > 0 {
			list = append(list, digest(src))
		}
	}
	return list
}

func (c *composer) attachments() []Attachment {
	var list []Attachment
	if len(c.StoneFile) > 0 {
		list = append(list, Attachment{c.stoneFileName(), "application/yaml", c.line(c.attachedAs("stone", "piece"), templates.None{}), c.StoneFile})
	}
	for i, item := range c.withFiles() {
		if src := c.Set[i].StoneFile; len(src) > 0 {
			list = append(list, Attachment{item.stoneFileName(), "application/yaml", c.line("attachment.stone", templates.None{}), src})
		}
	}
	if len(c.JSON) > 0 {
		list = append(list, Attachment{c.jsonName(), "application/json", c.line(c.attachedAs("examined", "examined piece"), templates.None{}), c.JSON})
	}
	return list
}

// attachedAs is the name of the sentence for an attachment.
func (c *composer) attachedAs(ofStone, ofPiece string) string {
	if c.p != nil {
		return "attachment." + ofPiece
	}
	return "attachment." + ofStone
}

// described is a picture with words for it, where it has none of its own.
func (c *composer) described(img *Image, name string, data any) *Image {
	if img == nil || img.Alt != "" {
		return img
	}
	return &Image{Data: img.Data, Alt: c.line(name, data)}
}

func digest(data []byte) string {
	if len(data) == 0 {
		return ""
	}
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:])
}

// lines splits an address as it was written.
func lines(s string) []string {
	var out []string
	for _, l := range strings.Split(s, "\n") {
		if l = strings.TrimSpace(l); l != "" {
			out = append(out, l)
		}
	}
	return out
}

// accent reads "#rrggbb"; anything else is the built-in ink.
func accent(s string) Color {
	v, err := strconv.ParseUint(strings.TrimPrefix(s, "#"), 16, 32)
	if err != nil || len(s) != 7 {
		return Color{}
	}
	return Color{R: uint8(v >> 16), G: uint8(v >> 8), B: uint8(v)}
}
