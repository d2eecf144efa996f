package pdf

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/xml"
	"fmt"
	"strings"
	"time"

	"stonewrit/report"
)

// xmpNamespace names the properties of our own in the XMP packet. It is a name
// only: nothing is to be found under it (RFC 2606 reserves the host).
const xmpNamespace = "http://stonewrit.example/document/1#"

// xmp returns the metadata packet (ISO 16684-1): title, author, language, dates
// and, in a namespace of our own, kind, number, UUID and the digests of the
// stone file and of the examined stone.
func xmp(doc report.Document, shown [sha256.Size]byte) []byte {
	var b bytes.Buffer
	b.WriteString("<?xpacket begin=\"\ufeff\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n")
	b.WriteString("<x:xmpmeta xmlns:x=\"adobe:ns:meta/\">\n<rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">\n")
	fmt.Fprintf(&b, "<rdf:Description rdf:about=\"\" xmlns:dc=\"http://purl.org/dc/elements/1.1/\" xmlns:xmp=\"http://ns.adobe.com/xap/1.0/\""+
		" xmlns:xmpMM=\"http://ns.adobe.com/xap/1.0/mm/\" xmlns:pdf=\"http://ns.adobe.com/pdf/1.3/\" xmlns:stonewrit=%q>\n", xmpNamespace)
	property := func(name, value, open, close string) {
		if value != "" {
			b.WriteString("<" + name + ">" + open)
			xml.EscapeText(&b, []byte(value)) // a bytes.Buffer never fails
			b.WriteString(close + "</" + name + ">\n")
		}
	}
	date := doc.Date.Format(time.RFC3339)
	if doc.Date.IsZero() {
		date = ""
	}
	property("dc:format", "application/pdf", "", "")
	property("dc:title", fileTitle(doc), `<rdf:Alt><rdf:li xml:lang="x-default">`, "</rdf:li></rdf:Alt>")
	property("dc:creator", doc.Metadata.Author, "<rdf:Seq><rdf:li>", "</rdf:li></rdf:Seq>")
	property("dc:description", doc.Metadata.Subject, `<rdf:Alt><rdf:li xml:lang="x-default">`, "</rdf:li></rdf:Alt>")
	property("dc:language", doc.Language, "<rdf:Bag><rdf:li>", "</rdf:li></rdf:Bag>")
	property("dc:identifier", doc.Number, "", "")
	property("pdf:Keywords", keywords(doc), "", "")
	property("pdf:Producer", doc.Metadata.Program, "", "")
	property("xmp:CreatorTool", doc.Metadata.Program, "", "")
	property("xmp:CreateDate", date, "", "")
	property("xmp:ModifyDate", date, "", "")
	if doc.UUID != "" {
		property("xmpMM:DocumentID", "uuid:"+doc.UUID, "", "")
	}
	property("stonewrit:kind", doc.Kind, "", "")
	property("stonewrit:number", doc.Number, "", "")
	property("stonewrit:uuid", doc.UUID, "", "")
	property("stonewrit:digest", doc.Metadata.Digest, "", "")
	property("stonewrit:shown", hex.EncodeToString(shown[:]), "", "")
	property("stonewrit:stones", strings.Join(doc.Metadata.Stones, " "), "", "")
	property("stonewrit:examined", doc.Metadata.Examined, "", "")
	b.WriteString("</rdf:Description>\n</rdf:RDF>\n</x:xmpmeta>\n<?xpacket end=\"r\"?>")
	return b.Bytes()
}

// fileTitle is the title of the file: what it is and its number.
func fileTitle(doc report.Document) string {
	return strings.TrimSpace(doc.Title + " " + doc.Number)
}

func keywords(doc report.Document) string { return strings.Join(doc.Metadata.Keywords, ", ") }

// fileDate is the date written into the file: the document's, or the beginning
// of 1970 if it has none, since the same document must give the same bytes.
func fileDate(doc report.Document) time.Time {
	if doc.Date.IsZero() {
		return time.Unix(0, 0).UTC()
	}
	return doc.Date
}
