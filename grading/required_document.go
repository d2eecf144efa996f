package grading

import (
	"fmt"
	"slices"
	"strings"

	"stonewrit/grading/phrase"
	"stonewrit/grading/stone"
)

// documentRows are asked of every document once: issuer, parties, dates, what
// the owner knows.
func documentRows() []requirement {
	return []requirement{
		{id: "issuer", lacks: func(m *matter) bool { return m.bench == nil || m.bench.Practice.Address == "" },
			needed: "the document needs name and address of the issuer", hint: "write practice: {name: …, address: …} in bench.yaml"},
		{id: "client", path: "client", lacks: func(m *matter) bool { return m.Client == nil && (m.kind != stone.ShortNote || m.Stock == nil) },
			needed: "the document needs the client (for a record, the owner)", hint: "client: {name: \"…\", address: \"…\"}; for stock of your own client: {name: own stock}"},
		{id: "client", path: "client", lacks: func(m *matter) bool {
			c := m.Client
			return c != nil && !ownStock(c) && c.Address == "" && c.Contact == ""
		}, needed: "the document needs how to reach the client", hint: "client: {name: \"…\", address: \"…\"} or contact: \"…\""},
		{id: "intended-use", path: "use.purpose", lacks: func(m *matter) bool { return m.purpose() == "" },
			needed: "the document needs what it is for", hint: "use: {purpose: insurance replacement, users: [client, insurer]}"},
		{id: "intended-users", path: "use.users", lacks: func(m *matter) bool { return len(m.Use.Users.Items) == 0 },
			needed: "an appraisal needs those who may rely on it", hint: "use: {users: [client, insurer]}"},
		{id: "intended-users", each: anybody, severity: stone.Warning}, // they are named, only too widely
		{id: "date-received", path: "received", lacks: func(m *matter) bool { return !m.Received.Given() },
			needed: "the document should tell when the item came in", hint: "received: 2026-10-12"},
		// issue asks who authorises, so that nothing is missing before; an owner's
		// record is authorised by whoever keeps it.
		{id: "authoriser", path: "authorised_by", severity: stone.Note, lacks: func(m *matter) bool { return m.Authorised == "" && !m.record() },
			needed: "nobody is named who authorises the document: issue will ask", hint: "authorised_by: okafor, an examiner of bench.yaml"},
		{id: "opinion-authorised", path: "examiner", lacks: func(m *matter) bool { return m.bench == nil || m.bench.Examiners[m.Examiner].Name == "" },
			needed: "the document needs who gives its opinions, by name", hint: "write examiners: {okafor: {name: \"…\"}} in bench.yaml"},
		{id: "rec-keep", lacks: func(m *matter) bool { return m.bench == nil || m.bench.Keep == "" },
			needed: "the document needs how long the records are kept", hint: "write keep: 5 years in bench.yaml"},
		{id: "confidential", path: "use.copies", lacks: func(m *matter) bool { return m.Use.Copies == "" && (m.bench == nil || m.bench.Terms.Copies == "") },
			needed: "the document needs to whom it may be shown", hint: "use: {copies: \"with the client's consent\"}, or terms: {copies: …} in bench.yaml for all"},
		{id: "photo", path: "photos", lacks: func(m *matter) bool { return len(m.Photos) == 0 },
			needed: "the document needs a photograph of the item", hint: "photos: [{file: photos/hl-0412-face.jpg, caption: \"face up\", scale: 0.0125 mm}]"},
		{id: "photo-scale", path: "photos", lacks: func(m *matter) bool { return len(m.Photos) > 0 && !scaled(m.Photos) },
			needed: "no picture tells its scale", hint: "scale: 0.0125 mm, the millimetres in one pixel of the picture"},
		{id: "ins-receipt", each: receipts},
		{id: "ins-current", each: oldValuations},
		{id: "owner-not-appraisal", path: "worth", lacks: func(m *matter) bool { return m.Worth != nil },
			needed: "a record makes no valuation of its own", hint: "write what somebody valued under valued:, with date and by"},
		{id: "cert-help", path: "scope.helpers", lacks: func(m *matter) bool { return !m.Scope.Helpers.Given },
			needed: "the document needs who helped, or that nobody did", hint: "scope: {helpers: none}"},
		{id: "competence", path: "examiner", lacks: func(m *matter) bool { return m.bench == nil || m.bench.Examiners[m.Examiner].Credentials == "" },
			needed: "the document needs the examiner's qualifications", hint: "write credentials: \"…\" under the examiner in bench.yaml"},
		{id: "cert-standard", each: undatedStandards},
	}
}

// ownStock reports whether the issuer is his own client.
func ownStock(c *stone.Client) bool { return strings.EqualFold(c.Name, "own stock") }

// purpose is what the document is for.
func (m *matter) purpose() string {
	if m.Use.Purpose == "" && m.Worth != nil {
		return m.Worth.Purpose
	}
	return m.Use.Purpose
}

// anybody finds users that are no users: who means everybody means nobody.
func anybody(m *matter) []lack {
	var list []lack
	for i, u := range m.Use.Users.Items {
		word, _, _ := strings.Cut(strings.ToLower(u), " ")
		if slices.Contains([]string{"any", "anyone", "anybody", "all", "everyone", "everybody", "public", "whoever"}, word) {
			list = append(list, lack{fmt.Sprintf("use.users[%d]", i), phrase.Say("%q names nobody who is meant to rely on it", u), "name them, or their kind: insurer, heirs"})
		}
	}
	return list
}

func scaled(list []stone.Photo) bool {
	return slices.ContainsFunc(list, func(p stone.Photo) bool { return p.Scale.Given() })
}

// receipts ask for the sale that the owner knows of; an appraisal should tell
// of one, an owner's record must.
func receipts(m *matter) []lack {
	o := m.Owned
	if o == nil {
		return []lack{{"owned", "the document needs what the owner knows of the purchase", "owned: {from: 2019-05-04, seller: \"…\", paid: \"1200.00 EUR\", receipt: scan.pdf}, or receipt: none"}}
	}
	if o.Receipt == "" {
		return []lack{{"owned.receipt", "the document needs where the receipt is, or that there is none", "receipt: scan.pdf, or receipt: none"}}
	}
	if m.record() && !o.From.Given() {
		return []lack{{"owned.from", "the record needs since when the item is owned", "from: 2019-05-04"}}
	}
	if m.record() && o.Seller == "" && o.Provenance == "" {
		return []lack{{"owned", "the record needs from whom the item is", "seller: \"…\", or provenance: \"inherited\""}}
	}
	return nil
}

// oldValuations finds what others valued too long ago to be relied on.
func oldValuations(m *matter) []lack {
	years := m.limit("valuation age")
	var list []lack
	for i, v := range m.Valued {
		if m.record() && v.Date.Given() && v.Date.AddDate(int(years), 0, 0).Before(m.today) {
			list = append(list, lack{fmt.Sprintf("valued[%d].date", i), phrase.Say("the valuation of %s is more than %d years old", v.Date, int(years)), "have it brought up to date before you rely on it"})
		}
	}
	return list
}

// undatedStandards finds standards named without their edition: the signer says
// which one was followed, or says nothing of it.
func undatedStandards(m *matter) []lack {
	var list []lack
	for i, s := range m.Standards {
		if !hasYear(s) {
			list = append(list, lack{fmt.Sprintf("standards[%d]", i), phrase.Say("%q does not say which edition was followed", s), "name the edition by its year, or leave it out"})
		}
	}
	return list
}

func hasYear(text string) bool {
	return slices.ContainsFunc(strings.FieldsFunc(text, func(r rune) bool { return r < '0' || r > '9' }), func(digits string) bool {
		return len(digits) == 4 && (digits[:2] == "19" || digits[:2] == "20")
	})
}
