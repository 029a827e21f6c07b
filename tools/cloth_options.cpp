#include "cloth_options.hpp"

#include "dartwright/pattern/place.hpp"

namespace dartwright::tools {

OptionSpec width_option(const char* help) {
    return {"width", 0, "LENGTH", help};
}

OptionSpec opened_option() {
    return {"opened", 0, "", "the cloth is not folded; pieces on a fold are laid whole"};
}

OptionSpec one_way_option() {
    return {"one-way", 0, "", "a nap or a print: every grain arrow points the same way"};
}

OptionSpec gap_option() {
    return {"gap", 0, "LENGTH", "left between pieces; 5 mm if absent"};
}

LayRequest lay_request(const Arguments& arguments) {
    LayRequest request;
    request.width_mm = parse_length(arguments.required("width"));
    request.is_folded = !arguments.has("opened");
    request.is_one_way = arguments.has("one-way");
    if (const auto gap = arguments.value("gap")) request.gap_mm = parse_length(*gap);
    return request;
}

}  // namespace dartwright::tools
