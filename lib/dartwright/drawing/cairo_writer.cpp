#include "dartwright/drawing/cairo_writer.hpp"

#include <stdexcept>

#include <cmath>
#include <memory>

#include "dartwright/drawing/cairo_functions.hpp"
#include "dartwright/drawing/text_box.hpp"
#include "dartwright/drawing/text_layout.hpp"
#include "dartwright/words/clean_text.hpp"
#include "dartwright/words/written_number.hpp"

namespace dartwright {

namespace {

struct Release {
    void operator()(cairo_t* context) const { cairo().destroy(context); }
    void operator()(cairo_surface_t* surface) const { cairo().surface_destroy(surface); }
};
using Surface = std::unique_ptr<cairo_surface_t, Release>;
using Context = std::unique_ptr<cairo_t, Release>;

void require_success(cairo_status_t status) {
    if (status == CAIRO_STATUS_NO_MEMORY) throw std::bad_alloc();
    if (status != CAIRO_STATUS_SUCCESS)
        throw std::runtime_error(std::string("the picture could not be made: ") +
                                 cairo().status_to_string(status));
}

cairo_status_t append(void* bytes, const unsigned char* data, unsigned int count) {
    try {
        static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(data), count);
        return CAIRO_STATUS_SUCCESS;
    } catch (const std::bad_alloc&) {
        return CAIRO_STATUS_NO_MEMORY;
    }
}

/// Draws on a surface whose user unit is scaled to one millimetre.
class Painter {
  public:
    Painter(cairo_surface_t* surface, double units_per_mm, double height_mm)
        : context_(cairo().create(surface)), height_mm_(height_mm) {
        cairo().scale(context_.get(), units_per_mm, units_per_mm);
        cairo().set_line_join(context_.get(), CAIRO_LINE_JOIN_ROUND);
        cairo().set_fill_rule(context_.get(), CAIRO_FILL_RULE_EVEN_ODD);
    }

    void paint(const Drawing& drawing) {
        use(drawing.background);
        cairo().paint(context_.get());
        for (const DrawnGroup& group : drawing.groups) paint(group);
        cairo().show_page(context_.get());
        require_success(cairo().status(context_.get()));
    }

  private:
    void use(Colour colour) {
        cairo().set_source_rgb(context_.get(), colour.red / 255.0, colour.green / 255.0, colour.blue / 255.0);
    }

    Point page(Point p) const { return {p.x, height_mm_ - p.y}; }

    void paint(const DrawnGroup& group) {
        cairo().save(context_.get());
        if (group.clip) {
            const Point corner = page({group.clip->low.x, group.clip->high.y});
            const Vector size = group.clip->high - group.clip->low;
            cairo().rectangle(context_.get(), corner.x, corner.y, size.x, size.y);
            cairo().clip(context_.get());
        }
        for (const DrawnItem& item : group.items) {
            if (const DrawnPath* path = std::get_if<DrawnPath>(&item))
                paint(*path);
            else
                paint(std::get<DrawnText>(item));
        }
        for (const DrawnGroup& inner : group.groups) paint(inner);
        cairo().restore(context_.get());
    }

    void trace(const DrawnPath& path) {
        const Point start = page(start_of(path.curves.front()));
        cairo().new_path(context_.get());
        cairo().move_to(context_.get(), start.x, start.y);
        for (const Curve& curve : path.curves) {
            const Point end = page(end_of(curve));
            if (const Cubic* cubic = std::get_if<Cubic>(&curve)) {
                const Point first = page(cubic->p[1]);
                const Point second = page(cubic->p[2]);
                cairo().curve_to(context_.get(), first.x, first.y, second.x, second.y, end.x, end.y);
            } else {
                cairo().line_to(context_.get(), end.x, end.y);
            }
        }
        if (path.is_closed) cairo().close_path(context_.get());
    }

    void paint(const DrawnPath& path) {
        if (path.curves.empty()) return;
        trace(path);
        if (path.fill) {
            use(*path.fill);
            cairo().fill_preserve(context_.get());
        }
        if (path.stroke) {
            const Stroke& stroke = *path.stroke;
            use(stroke.colour);
            cairo().set_line_width(context_.get(), stroke.width_mm);
            cairo().set_line_cap(context_.get(),
                                 stroke.dash_mm.empty() ? CAIRO_LINE_CAP_ROUND : CAIRO_LINE_CAP_BUTT);
            cairo().set_dash(context_.get(), stroke.dash_mm.data(), static_cast<int>(stroke.dash_mm.size()),
                             stroke.dash_begin_mm);
            cairo().stroke_preserve(context_.get());
        }
        cairo().new_path(context_.get());
    }

    void paint(const DrawnText& text) {
        const LineLook look{text.size_mm, text.is_bold};
        cairo().save(context_.get());
        const Point at = page(text.at);
        cairo().translate(context_.get(), at.x, at.y);
        cairo().rotate(context_.get(), -text.angle_rad);
        const double width = line_width(text.words, look);
        const double before = text.anchor == Anchor::start    ? 0
                              : text.anchor == Anchor::middle ? width / 2
                                                              : width;
        cairo().translate(context_.get(), -before, 0);
        cairo().new_path(context_.get());
        if (text.halo) {
            trace_line(context_.get(), text.words, look);
            use(*text.halo);
            cairo().set_dash(context_.get(), nullptr, 0, 0);
            cairo().set_line_width(context_.get(), halo_width_em * text.size_mm);
            cairo().stroke(context_.get());
        }
        use(text.colour);
        show_line(context_.get(), text.words, look);
        cairo().new_path(context_.get());
        cairo().restore(context_.get());
    }

    Context context_;
    double height_mm_;
};

}  // namespace

PictureTooLarge::PictureTooLarge(double width, double height)
    : Error(ErrorKind::impossible, "a picture of " + shortest_decimals(width, 0) + " by " +
                                       shortest_decimals(height, 0) + " pixels is larger than " +
                                       std::to_string(most_pixels) + " a side: take a lower resolution"),
      width_pixels(width),
      height_pixels(height) {}

std::string to_png(const Drawing& drawing, double pixels_per_mm) {
    require_drawable(drawing);
    if (!std::isfinite(pixels_per_mm) || pixels_per_mm <= 0)
        throw std::invalid_argument("the resolution must be above 0 pixels a millimetre");
    const double width = std::ceil(drawing.width_mm * pixels_per_mm);
    const double height = std::ceil(drawing.height_mm * pixels_per_mm);
    if (width > most_pixels || height > most_pixels) throw PictureTooLarge(width, height);
    const Surface surface(
        cairo().image_surface_create(CAIRO_FORMAT_RGB24, static_cast<int>(width), static_cast<int>(height)));
    require_success(cairo().surface_status(surface.get()));
    Painter(surface.get(), pixels_per_mm, drawing.height_mm).paint(drawing);
    std::string bytes;
    require_success(cairo().surface_write_to_png_stream(surface.get(), append, &bytes));
    return bytes;
}

std::string to_pdf(const std::vector<Drawing>& pages, const std::function<void(std::size_t)>& after_page) {
    if (pages.empty()) throw std::invalid_argument("a PDF needs a page");
    for (const Drawing& page : pages) require_drawable(page);
    constexpr double points_per_mm = 72 / 25.4;
    std::string bytes;
    const Surface surface(cairo().pdf_surface_create_for_stream(
        append, &bytes, pages.front().width_mm * points_per_mm, pages.front().height_mm * points_per_mm));
    require_success(cairo().surface_status(surface.get()));
    // The format wants a date, and the hour of printing would make every copy a different file.
    cairo().pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATE_DATE, "2000-01-01T00:00:00Z");
    const std::string title = clean_text(pages.front().title);
    if (!title.empty())
        cairo().pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_TITLE, title.c_str());
    for (std::size_t i = 0; i < pages.size(); ++i) {
        cairo().pdf_surface_set_size(surface.get(), pages[i].width_mm * points_per_mm,
                                     pages[i].height_mm * points_per_mm);
        Painter(surface.get(), points_per_mm, pages[i].height_mm).paint(pages[i]);
        if (after_page) after_page(i + 1);
    }
    cairo().surface_finish(surface.get());
    require_success(cairo().surface_status(surface.get()));
    return bytes;
}

std::string to_pdf(const Drawing& drawing) {
    return to_pdf(std::vector<Drawing>{drawing});
}

}  // namespace dartwright
