package main

import (
	"sync"

	"stonewrit/grading/stone"
	"stonewrit/report/register"
	"stonewrit/report/seal"
)

// A candidate is a stone that is to have a number, with all that can be known
// before its turn. Several may be made at once.
type candidate struct {
	rec      *record
	req      register.Request // of a record that can be used
	err      error            // of the request
	prepared func() prepared  // made once, when it is first asked for
}

// candidate reads one stone. Its document is prepared too where the stones before
// it are new on the register: a stone that was issued before needs none.
func (i *issuer) candidate(l listing) *candidate {
	c := &candidate{rec: i.r.read(l)}
	if c.rec.unread() {
		return c
	}
	c.req, c.err = i.request(c.rec)
	c.prepared = sync.OnceValue(func() prepared { return i.prepare(c.rec) })
	if c.err == nil && i.ahead.Load() {
		c.prepared()
	}
	return c
}

// prepared is the document of a candidate, ready but for its number.
type prepared struct {
	m        *manuscript    // nil where the stone cannot be used
	problems stone.Problems // of one that cannot
	err      error
	tried    bool  // to print it, since it is known who authorises it
	unfit    error // what keeps it from being printed
}

// prepare judges a stone and makes its manuscript.
func (i *issuer) prepare(rec *record) (d prepared) {
	if list := rec.bench.unwritten(); len(list) > 0 {
		return prepared{problems: list}
	}
	if d.m, d.problems, d.err = i.r.ready(rec, i.shops); d.m == nil {
		return d
	}
	d.m.input.Code = seal.Code
	if who, known := i.people.beforehand(rec.stone); known {
		d.tried, d.unfit = true, i.fits(d.m, who)
	}
	return d
}

// fits notes who authorises a document, and reports what would keep it from
// being printed.
func (i *issuer) fits(m *manuscript, who string) error {
	m.authorised(who)
	now := i.p.now()
	number, err := sampleNumber(m.rec.bench, now)
	if err != nil {
		return err
	}
	return m.printable(number, m.rec.bench.local(now))
}

// request is what the register wants to know of a stone.
func (i *issuer) request(rec *record) (register.Request, error) {
	var none register.Request
	if _, err := registerPath(rec.bench); err != nil {
		return none, &failure{about(rec, err), hintOf(err), err}
	}
	shop, err := i.shops.of(rec.bench)
	if err != nil {
		return none, err
	}
	content, err := contentOf(rec, shop)
	if err != nil {
		return none, err
	}
	days := rec.stone.Examined.Items
	return register.Request{
		Stone: rec.stone.Reference, Kind: register.Kind(rec.stone.Report), Examiner: rec.stone.Examiner,
		Examined: register.Span{First: register.DayOf(days[0].Time), Last: register.DayOf(days[len(days)-1].Time)},
		Content:  content, Program: name + " " + version(), Data: i.r.tables.Gems.Version(), Folder: i.options.out,
	}, nil
}

// about names the stone file where there is no bench file to name.
func about(rec *record, err error) string {
	if rec.bench == nil {
		return rec.file + ": " + err.Error()
	}
	return err.Error()
}
