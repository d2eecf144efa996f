package seal

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/types"
)

// namespace is that of our properties in the XMP metadata.
const namespace = "http://stonewrit.example/document/1#"

// metadata reads the XMP packet of the document (ISO 16684-1).
func (d *Document) metadata(ctx *model.Context) error {
	catalog, err := ctx.Catalog()
	if err != nil {
		return fmt.Errorf("%w: %s", ErrNotPDF, firstLine(err))
	}
	entry, ok := catalog.Find("Metadata")
	if !ok {
		return ErrForeign
	}
	packet, err := stream(ctx, entry)
	if err != nil {
		return fmt.Errorf("%w: %s", ErrNotPDF, firstLine(err))
	}
	ours, err := properties(packet)
	if err != nil {
		return fmt.Errorf("%w: metadata: %v", ErrNotPDF, err)
	}
	d.Number, d.UUID, d.Kind, d.Stone, d.Examined = ours["number"], ours["uuid"], ours["kind"], ours["digest"], ours["examined"]
	d.Shown = ours["shown"]
	d.Stones = strings.Fields(ours["stones"])
	if d.Number == "" {
		return ErrForeign
	}
	return nil
}

// stream unpacks a stream.
func stream(ctx *model.Context, o types.Object) ([]byte, error) {
	sd, _, err := ctx.DereferenceStreamDict(o)
	if err != nil {
		return nil, err
	}
	if sd == nil {
		return nil, errors.New("no stream where one is due")
	}
	if err := sd.Decode(); err != nil {
		return nil, err
	}
	return sd.Content, nil
}

// properties reads our properties by name, the first of each.
func properties(packet []byte) (map[string]string, error) {
	found := map[string]string{}
	in := xml.NewDecoder(bytes.NewReader(packet))
	for {
		token, err := in.Token()
		if errors.Is(err, io.EOF) {
			return found, nil
		}
		if err != nil {
			return nil, err
		}
		start, ok := token.(xml.StartElement)
		if !ok || start.Name.Space != namespace {
			continue
		}
		var value string
		if err := in.DecodeElement(&value, &start); err != nil {
			return nil, err
		}
		if _, twice := found[start.Name.Local]; !twice {
			found[start.Name.Local] = strings.TrimSpace(value)
		}
	}
}
