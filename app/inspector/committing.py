"""Does an edit that was typed in a field, and hands the reason back when it is refused."""

from app.session import Session
from wiring.edits.edit import Edit, EditRefused


def committed(session: Session, edit: Edit) -> str:
    """Do the edit; return "" or the sentence that says why not, to be shown under the field."""
    try:
        edit.apply(session.plan)
    except EditRefused as refusal:
        return str(refusal)
    session.do(edit)
    return ""
