package pdf

import (
	"crypto/md5"
	"fmt"
	"strings"

	"stonewrit/report"
)

// attach embeds the attachments (ISO 32000-1, 7.11.4) and returns the catalogue
// entries that name them.
func (f *file) attach(doc report.Document) string {
	if len(doc.Attachments) == 0 {
		return ""
	}
	date := pdfDate(doc)
	var names, refs strings.Builder
	for i, a := range doc.Attachments {
		stream := f.addDeflated(fmt.Sprintf("/Type /EmbeddedFile /Subtype /%s /Params <</Size %d /CheckSum <%x> /ModDate %s>>",
			pdfName(a.Type), len(a.Data), md5.Sum(a.Data), date), a.Data)
		spec := f.add(fmt.Sprintf("<</Type /Filespec /F %s /UF %s /Desc %s /AFRelationship /Source /EF <</F %d 0 R /UF %d 0 R>>>>",
			textString(a.Name), textString(a.Name), textString(a.Description), stream, stream))
		fmt.Fprintf(&names, "(%03d) %d 0 R ", i, spec) // sorted, as a name tree must be (7.9.6)
		fmt.Fprintf(&refs, "%d 0 R ", spec)
	}
	return fmt.Sprintf(" /Names <</EmbeddedFiles <</Names [%s]>>>> /AF [%s]", names.String(), refs.String())
}
