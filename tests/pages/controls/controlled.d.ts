/** A form in which the page's own state, not the control, is the truth. */
interface State {
    street: string;
    flow: string;
    date: string;
    comments: string;
    range: string;
    result: string;
    sealed: boolean;
    digits: string;
    fixed: string;
}
declare global {
    interface Window {
        state: State;
    }
}
export {};
