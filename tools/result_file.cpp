#include "result_file.hpp"

#include "dartwright/files/output_file.hpp"

namespace dartwright::tools {

OptionSpec output_option(const char* help) {
    return {"output", 'o', "FILE", help};
}

OptionSpec overwrite_option() {
    return {"overwrite", 0, "", "replace the file of -o if there is one; otherwise it is left alone"};
}

bool is_to_standard_output(const Arguments& arguments) {
    return arguments.value("output").value_or("-") == "-";
}

void write_output_file(const Arguments& arguments, const std::string& bytes) {
    const std::string path = arguments.required("output");
    if (path.empty()) throw WrongUse("-o needs the name of a file");
    write_file_whole(path, bytes, arguments.has("overwrite") ? Overwrite::yes : Overwrite::no);
}

void write_result(const Arguments& arguments, Output& out, const std::string& result,
                  const std::string& account) {
    if (is_to_standard_output(arguments)) {
        out.write(result);
        out.flush();
        say_text(account);
    } else {
        write_output_file(arguments, result);
        out.write(account);
    }
}

}  // namespace dartwright::tools
