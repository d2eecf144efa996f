package register

import (
	"bytes"
	"encoding/json"
	"fmt"
	"time"

	"github.com/google/uuid"
)

// eventFormat is the version of the bytes that are hashed. Fields may be added
// without raising it, since the stored bytes are hashed as they are.
const eventFormat = 1

type eventKind string

const (
	issueEvent eventKind = "issue"
	voidEvent  eventKind = "void"
)

// An event is one link of the chain.
type event struct {
	Format  int          `json:"register"`
	Seq     int64        `json:"seq"` // from 1, without gaps
	Kind    eventKind    `json:"event"`
	At      time.Time    `json:"at"`
	Prev    Digest       `json:"prev"` // hash of the event before; zero for the first
	Number  Number       `json:"number"`
	Issue   *particulars `json:"issue,omitempty"`
	Because string       `json:"because,omitempty"` // of a void, or of an issue that replaces
}

// particulars are what an issue event says beside its number and time.
type particulars struct {
	UUID     uuid.UUID `json:"uuid"`
	Stone    string    `json:"stone"`
	Kind     Kind      `json:"kind"`
	Examined Span      `json:"examined"`
	Examiner string    `json:"examiner"`
	Content
	PDF      Digest `json:"pdf_sha256"`
	Size     int64  `json:"pdf_bytes"`
	File     string `json:"file"`
	Office   string `json:"office,omitempty"`
	Program  string `json:"program"`
	Data     string `json:"data"`
	Replaces Number `json:"replaces,omitzero"`
}

// encode returns the canonical bytes of the event and their hash.
func (e event) encode() ([]byte, Digest, error) {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false) // the bytes are read by people
	if err := enc.Encode(e); err != nil {
		return nil, Digest{}, fmt.Errorf("event %d: %w", e.Seq, err)
	}
	body := bytes.TrimSuffix(b.Bytes(), []byte("\n"))
	return body, Sum(body), nil
}

func decodeEvent(body []byte) (event, error) {
	var e event
	if err := json.Unmarshal(body, &e); err != nil {
		return event{}, err
	}
	if e.Kind == issueEvent && e.Issue == nil {
		return event{}, fmt.Errorf("an issue without its particulars")
	}
	return e, nil
}

// entry returns the entry that an issue event makes. Hash is that of the
// event's bytes.
func (e event) entry(hash Digest) Entry {
	i := e.Issue
	return Entry{
		Number: e.Number, UUID: i.UUID, Stone: i.Stone, Kind: i.Kind,
		Examined: i.Examined, Examiner: i.Examiner, Issued: e.At,
		Content: i.Content, PDF: i.PDF, Size: i.Size, File: i.File, Office: i.Office,
		Program: i.Program, Data: i.Data, State: Issued, Replaces: i.Replaces,
		Event: e.Seq, Prev: e.Prev, Hash: hash,
	}
}

// A standing is what later events make of an entry.
type standing struct {
	state      State
	reason     string
	replacedBy Number
}

// change returns which entry other than its own the event changes, and how.
func (e event) change() (Number, standing, bool) {
	switch {
	case e.Kind == voidEvent:
		return e.Number, standing{state: Void, reason: e.Because}, true
	case e.Kind == issueEvent && e.Issue != nil && !e.Issue.Replaces.IsZero():
		return e.Issue.Replaces, standing{state: Amended, reason: e.Because, replacedBy: e.Number}, true
	}
	return Number{}, standing{}, false
}

func (s standing) apply(e *Entry) {
	e.State, e.Reason, e.ReplacedBy = s.state, s.reason, s.replacedBy
}
